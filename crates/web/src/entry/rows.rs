//! A table as rows of cells that are kept exactly as they were typed.

/// A table with its header.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Rows {
    /// Names of the columns.
    pub header: Vec<String>,
    /// Cells; every row has as many as the header.
    pub rows: Vec<Vec<String>>,
    /// Remarks in lines of their own, each with the number of rows before it.
    remarks: Vec<(usize, String)>,
}

impl Rows {
    /// With a header and rows.
    pub fn new(header: Vec<String>, rows: Vec<Vec<String>>) -> Rows {
        Rows { header, rows, remarks: vec![] }
    }
    /// Reads a table as people write it. A line that begins with `#` is a remark and is kept where it stood.
    pub fn read(text: &str, usual: &[&str]) -> Rows {
        let mut table = Rows::default();
        for mut row in cells(text).into_iter().filter(|r| r.iter().any(|c| !c.is_empty())) {
            if row[0].starts_with('#') {
                table.remarks.push((table.rows.len(), row.join(",")));
            } else if table.header.is_empty() {
                table.header = row;
            } else {
                row.resize(table.header.len(), String::new());
                table.rows.push(row);
            }
        }
        if table.header.is_empty() {
            table.header = usual.iter().map(|s| (*s).to_string()).collect();
        }
        table
    }
    /// The table as text.
    pub fn text(&self) -> String {
        let mut out = line(&self.header);
        for i in 0..=self.rows.len() {
            for (_, remark) in self.remarks.iter().filter(|(at, _)| *at == i) {
                out.push_str(&format!("{remark}\n"));
            }
            if let Some(r) = self.rows.get(i) {
                out.push_str(&line(r));
            }
        }
        out
    }
    /// Number of a column.
    pub fn column(&self, name: &str) -> Option<usize> {
        self.header.iter().position(|h| h == name)
    }
    /// Number of a column, added where it is missing.
    pub fn column_made(&mut self, name: &str) -> usize {
        self.column(name).unwrap_or_else(|| {
            self.header.push(name.into());
            self.rows.iter_mut().for_each(|r| r.push(String::new()));
            self.header.len() - 1
        })
    }
    /// A cell; empty where there is none.
    pub fn cell(&self, row: usize, name: &str) -> &str {
        let cell = self.column(name).and_then(|c| self.rows.get(row)?.get(c));
        cell.map_or("", String::as_str)
    }
    /// Sets a cell that is there.
    pub fn set(&mut self, row: usize, name: &str, text: &str) {
        let Some(c) = self.column(name) else { return };
        if let Some(cell) = self.rows.get_mut(row).and_then(|r| r.get_mut(c)) {
            *cell = text.into();
        }
    }
    /// Adds an empty row and gives its number.
    pub fn add(&mut self) -> usize {
        self.rows.push(vec![String::new(); self.header.len()]);
        self.rows.len() - 1
    }
}

fn line(cells: &[String]) -> String {
    let quoted = |c: &String| {
        if c.contains([',', '"', '\n', '\r']) || c.starts_with('#') {
            format!("\"{}\"", c.replace('"', "\"\""))
        } else {
            c.clone()
        }
    };
    let mut out = cells.iter().map(quoted).collect::<Vec<_>>().join(",");
    out.push('\n');
    out
}

/// Cells of comma-separated text, quotes doubled inside quotes (RFC 4180).
fn cells(text: &str) -> Vec<Vec<String>> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let (mut rows, mut row, mut cell, mut quoted) = (vec![], vec![], String::new(), false);
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        match c {
            // A remark is one cell, as it stands.
            '#' if !quoted && row.is_empty() && cell.trim().is_empty() => {
                let rest: String = std::iter::from_fn(|| chars.next_if(|c| *c != '\n')).collect();
                cell.clear();
                row.push(format!("#{}", rest.trim_end()));
                chars.next();
                rows.push(std::mem::take(&mut row));
            }
            '"' if quoted && chars.peek() == Some(&'"') => {
                chars.next();
                cell.push('"');
            }
            '"' if quoted => quoted = false,
            '"' if cell.trim().is_empty() => {
                cell.clear();
                quoted = true;
            }
            ',' if !quoted => row.push(std::mem::take(&mut cell).trim().to_string()),
            '\n' if !quoted => {
                row.push(std::mem::take(&mut cell).trim().to_string());
                rows.push(std::mem::take(&mut row));
            }
            _ => cell.push(c),
        }
    }
    if !cell.is_empty() || !row.is_empty() {
        row.push(cell.trim().to_string());
        rows.push(row);
    }
    rows
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]
        #[test]
        fn a_table_written_reads_back_as_it_was(rows in prop::collection::vec(prop::collection::vec("[a-z0-9,\".][a-z0-9,\"#.]{0,5}", 3), 0..6)) {
            let table = Rows::new(vec!["a".into(), "b".into(), "c".into()], rows);
            prop_assert_eq!(Rows::read(&table.text(), &[]), table);
        }
    }

    #[test]
    fn a_remark_in_a_line_of_its_own_stays_where_it_stood() {
        let text = "point,along\n1,2\n# by the hedge, wet\n2,3\n";
        assert_eq!(Rows::read(text, &[]).text(), text);
    }

    #[test]
    fn a_column_can_be_added_and_a_short_row_is_filled_up() {
        let mut t = Rows::read("point,along\n1\n", &[]);
        let c = t.column_made("from C");
        assert_eq!((c, t.rows[0].len(), t.cell(0, "along")), (2, 3, ""));
        t.set(0, "from C", "3.2");
        assert_eq!(t.text(), "point,along,from C\n1,,3.2\n");
    }
}
