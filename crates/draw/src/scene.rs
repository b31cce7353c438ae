//! What is on a sheet: lines, areas, circles and text in millimetres of paper, y downwards, the origin at the top left.

/// A place on paper in millimetres; `x` to the right, `y` downwards.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct At {
    /// To the right.
    pub x: f64,
    /// Downwards.
    pub y: f64,
}

impl At {
    /// From millimetres.
    pub const fn mm(x: f64, y: f64) -> At {
        At { x, y }
    }
}

/// A colour: red, green, blue, each 0 to 255.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ink(pub u8, pub u8, pub u8);

/// How a line is drawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Pen {
    /// Width in millimetres.
    pub width: f64,
    /// Colour.
    pub ink: Ink,
    /// Lengths of dash and gap in millimetres; empty for a full line.
    pub dash: Vec<f64>,
}

impl Pen {
    /// A full line.
    pub const fn new(width: f64, ink: Ink) -> Pen {
        Pen { width, ink, dash: Vec::new() }
    }
    /// The same, dashed.
    pub fn dashed(mut self, dash: &[f64]) -> Pen {
        self.dash = dash.to_vec();
        self
    }
}

/// Where a text stands from its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Align {
    /// Begins there.
    #[default]
    Start,
    /// Its middle is there.
    Middle,
    /// Ends there.
    End,
}

/// How heavy a text is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Weight {
    /// Ordinary.
    #[default]
    Regular,
    /// Bold.
    Bold,
}

/// A text on one line.
#[derive(Debug, Clone, PartialEq)]
pub struct Label {
    /// Its base line begins, is centred or ends here.
    pub at: At,
    /// What it says.
    pub text: String,
    /// Size of the type in millimetres (the em; capitals are about 0.72 of it).
    pub size: f64,
    /// Where it stands from its place.
    pub align: Align,
    /// Turned anticlockwise by so many degrees round its place.
    pub turn: f64,
    /// How heavy.
    pub weight: Weight,
    /// Colour.
    pub ink: Ink,
    /// True for a white edge that keeps it readable over lines.
    pub halo: bool,
}

impl Label {
    /// A text that begins at a place, regular and black.
    pub fn new(at: At, text: impl Into<String>, size: f64) -> Label {
        Label {
            at,
            text: text.into(),
            size,
            align: Align::Start,
            turn: 0.0,
            weight: Weight::Regular,
            ink: Ink(0x1e, 0x1c, 0x19),
            halo: false,
        }
    }
    /// The same, centred on its place.
    pub fn middle(mut self) -> Label {
        self.align = Align::Middle;
        self
    }
    /// The same, ending at its place.
    pub fn end(mut self) -> Label {
        self.align = Align::End;
        self
    }
    /// The same, bold.
    pub fn bold(mut self) -> Label {
        self.weight = Weight::Bold;
        self
    }
    /// The same in another colour.
    pub fn ink(mut self, ink: Ink) -> Label {
        self.ink = ink;
        self
    }
    /// The same, turned anticlockwise by so many degrees.
    pub fn turned(mut self, degrees: f64) -> Label {
        self.turn = degrees;
        self
    }
    /// The same with a white edge.
    pub fn halo(mut self) -> Label {
        self.halo = true;
        self
    }
}

impl From<Label> for Item {
    fn from(l: Label) -> Item {
        Item::Text(l)
    }
}

/// One thing on the sheet.
#[derive(Debug, Clone, PartialEq)]
pub enum Item {
    /// A line through points.
    Line {
        /// Points.
        points: Vec<At>,
        /// Pen.
        pen: Pen,
    },
    /// An area.
    Area {
        /// Outline.
        points: Vec<At>,
        /// Its edge, if drawn.
        pen: Option<Pen>,
        /// Its filling, if any.
        fill: Option<Ink>,
    },
    /// A circle.
    Circle {
        /// Centre.
        at: At,
        /// Radius in millimetres.
        radius: f64,
        /// Its edge, if drawn.
        pen: Option<Pen>,
        /// Its filling, if any.
        fill: Option<Ink>,
    },
    /// A text.
    Text(Label),
    /// Things that belong to an element of the job: `W1 post 3`.
    Group {
        /// The element and the place on it; empty for none.
        element: String,
        /// What a reader who cannot see it is told.
        title: String,
        /// The things.
        items: Vec<Item>,
    },
}

/// A sheet.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Scene {
    /// Width in millimetres.
    pub width: f64,
    /// Height in millimetres.
    pub height: f64,
    /// What a reader who cannot see it is told.
    pub title: String,
    /// Scale it is drawn to, such as `1:50`; empty where there is none.
    pub scale: String,
    /// From the back to the front.
    pub items: Vec<Item>,
}

impl Scene {
    /// An empty sheet.
    pub fn new(width: f64, height: f64, title: impl Into<String>) -> Scene {
        Scene { width, height, title: title.into(), scale: String::new(), items: vec![] }
    }
    /// Puts a thing on top.
    pub fn push(&mut self, item: Item) {
        self.items.push(item);
    }
    /// Puts another sheet's things on top, moved.
    pub fn place(&mut self, other: &Scene, right: f64, down: f64) {
        self.items.extend(other.items.iter().map(|i| i.moved(right, down)));
    }
}

impl Item {
    /// The same thing elsewhere.
    pub fn moved(&self, right: f64, down: f64) -> Item {
        let m = |a: &At| At::mm(a.x + right, a.y + down);
        match self {
            Item::Line { points, pen } => Item::Line { points: points.iter().map(m).collect(), pen: pen.clone() },
            Item::Area { points, pen, fill } => {
                Item::Area { points: points.iter().map(m).collect(), pen: pen.clone(), fill: *fill }
            }
            Item::Circle { at, radius, pen, fill } => {
                Item::Circle { at: m(at), radius: *radius, pen: pen.clone(), fill: *fill }
            }
            Item::Text(l) => Item::Text(Label { at: m(&l.at), ..l.clone() }),
            Item::Group { element, title, items } => Item::Group {
                element: element.clone(),
                title: title.clone(),
                items: items.iter().map(|i| i.moved(right, down)).collect(),
            },
        }
    }
}
