//! A new job: nothing but a name, or a slope in two numbers cut into level areas with a wall between each and the next.

use groundhold_quantity::Length;

use super::{Files, JOB, metres};

/// A slope in two numbers.
#[derive(Debug, Clone, PartialEq)]
pub struct Slope {
    /// What the job is called.
    pub name: String,
    /// Height difference.
    pub fall: Length,
    /// Plan length over which it falls.
    pub over: Length,
    /// Width along the contour.
    pub width: Length,
    /// How many level areas, one above the other.
    pub tiers: u32,
    /// Class of soil, told by hand.
    pub soil: String,
}

/// The materials of the demo's price list stand in every new job, so that there is a price; they are invented.
const PRICES: &str = include_str!("../../../../demo/prices.csv");

fn quoted(t: &str) -> String {
    let clean: String = t.chars().filter(|c| !c.is_control() && *c != '\\').collect();
    format!("\"{}\"", clean.replace('"', "'"))
}

fn head(name: &str) -> String {
    format!(
        "# A number always carries its unit. Ids are short and never change.\nschema = 1\n\n[job]\nname = {}\n# The price list is invented: put your merchant's prices in its place.\ndemo = true\n",
        quoted(name)
    )
}

/// A job with a name and a level book to be filled in: two pegs and a datum.
pub fn fresh(name: &str, base: Length) -> Files {
    let text = format!(
        "{}\n[measure]\ndatum = {{ peg = \"A\", level = \"100.000 m\", note = \"\" }}\npegs = {{ A = [\"0 m\", \"0 m\"], B = [\"{}\", \"0 m\"] }}\nbook = \"levels.csv\"\npositions = \"positions.csv\"\nclose = {{ misclose = \"5 mm\", per = \"set-up\" }}\n\n[ground]\nturf = \"40 mm\"\ntopsoil = \"200 mm\"\nsoil = \"silty-clay\"\n\n[order]\nprices = \"prices.csv\"\n",
        head(name),
        metres(base)
    );
    Files::of(&[
        (JOB, &text),
        ("levels.csv", "station,backsight,intermediate,foresight,remark\n"),
        ("positions.csv", "point,along,off,from A,from B,remark\n"),
        ("prices.csv", PRICES),
    ])
}

/// A job from a slope in two numbers.
pub fn fresh_from(s: &Slope) -> Files {
    let point = |x: f64, y: f64| format!("[\"{}\", \"{}\"]", metres(Length::m(x)), metres(Length::m(y)));
    let n = s.tiers.clamp(1, 12);
    let (w, depth) = (s.width.to_m(), s.over.to_m() / f64::from(n));
    let step = s.fall.to_m() / f64::from(n);
    let mut out = format!(
        "{}\n[measure]\n# Two numbers instead of a survey. North is uphill; the foot lies at level 100.\nslope = {{ fall = \"{}\", over = \"{}\", width = \"{}\" }}\n\n[ground]\nturf = \"40 mm\"\ntopsoil = \"150 mm\"\nsoil = {}\n\n[order]\nprices = \"prices.csv\"\n",
        head(&s.name),
        metres(s.fall),
        metres(s.over),
        metres(s.width),
        quoted(&s.soil)
    );
    for i in 0..n {
        let (lo, hi) = (depth * f64::from(i), depth * f64::from(i + 1));
        let level = 100.0 + step * (f64::from(i) + 0.5);
        out.push_str(&format!(
            "\n[[pad]]\nid = \"P{}\"\ncorners = [{}, {}, {}, {}]\nlevel = \"{level:.3} m\"   # half-way up this strip\n",
            i + 1,
            point(0.0, lo),
            point(w, lo),
            point(w, hi),
            point(0.0, hi)
        ));
    }
    for i in 1..n {
        let y = depth * f64::from(i);
        out.push_str(&format!(
            "\n[[wall]]\nid = \"W{i}\"\nsystem = \"timber-post-and-board\"\nline = [{}, {}]\nends = [\"at\", \"at\"]\nretains = \"left\"\ntop = {{ above = \"P{}\", by = \"0 mm\" }}\n\n[wall.spec]\npost = \"125x125 UC4 C24\"\nboard = \"200x50 UC4 C24\"\nspacing = \"1.2 m\"\n",
            point(0.0, y),
            point(w, y),
            i + 1
        ));
    }
    Files::of(&[(JOB, &out), ("prices.csv", PRICES)])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slope_in_two_numbers_plans_and_has_a_price() {
        let s = Slope {
            name: "Bank \"behind\" the shed".into(),
            fall: Length::m(1.2),
            over: Length::m(7.0),
            width: Length::m(6.0),
            tiers: 2,
            soil: "silty-clay".into(),
        };
        let job = fresh_from(&s).read().whole().unwrap();
        assert_eq!((job.pads.len(), job.walls.len()), (2, 1));
        let plan = groundhold_plan::plan(&job).unwrap();
        assert!(plan.quote.total.amount() > 0.0);
    }

    #[test]
    fn an_empty_job_reads_without_a_problem() {
        assert_eq!(fresh("x", Length::m(10.0)).read().problems, []);
    }
}
