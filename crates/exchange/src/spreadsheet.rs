//! The workbook for those who reckon on: the tables of a plan as sheets, sums as formulas that can be followed.

use groundhold_plan::Plan;
use groundhold_quantity::trim;
use rust_xlsxwriter::{
    Color, DocProperties, ExcelDateTime, Format, FormatAlign, FormatBorder, Formula, Workbook, Worksheet, XlsxError,
    utility::row_col_to_cell,
};

use crate::grid::{Cell, Grid};
use crate::grids;

/// A workbook that cannot be written.
#[derive(Debug, thiserror::Error)]
pub enum NoSpreadsheet {
    /// The date is not one.
    #[error("date: found `{0}`, expected a date such as 2026-05-11")]
    Date(String),
    /// The writer refused.
    #[error("the workbook cannot be written: {0}")]
    Writer(#[from] XlsxError),
}

/// The workbook as bytes. `date`, as in `2026-05-11`, is the only date in it: the same plan and date give the same bytes.
///
/// # Errors
/// [`NoSpreadsheet`] where the date is not one.
pub fn spreadsheet(plan: &Plan, date: &str) -> Result<Vec<u8>, NoSpreadsheet> {
    let made = Some(date)
        .filter(|d| d.len() == 10)
        .and_then(|d| ExcelDateTime::parse_from_str(d).ok())
        .ok_or_else(|| NoSpreadsheet::Date(date.chars().take(40).collect()))?;
    let mut book = Workbook::new();
    book.set_properties(&DocProperties::new().set_title(&plan.job.about.name).set_creation_datetime(&made));
    about(&mut book, plan, date)?;
    order(&mut book, plan)?;
    quote(&mut book, plan)?;
    let sheets = [
        ("Cutting list", grids::cutting_list(plan)),
        ("Posts", grids::posts(plan)),
        ("Boards", grids::boards(plan)),
        ("Set-out", grids::marks(plan)),
        ("Pegs", grids::pegs(plan)),
        ("Proofs", grids::checks(plan)),
        ("Earthworks", grids::earthworks(plan)),
        ("Drainage", grids::drainage(plan)),
        ("Carries", grids::carries(plan)),
        ("Programme", grids::programme(plan)),
        ("Findings", grids::findings(plan)),
    ];
    for (name, grid) in sheets {
        sheet(&mut book, name, &grid)?;
    }
    Ok(book.save_to_buffer()?)
}

fn head() -> Format {
    let ground = Color::RGB(0xE7_E3_D8);
    Format::new().set_bold().set_background_color(ground).set_border_bottom(FormatBorder::Thin).set_text_wrap()
}

fn bold() -> Format {
    Format::new().set_bold()
}

/// A number format with so many decimals and groups of three.
fn decimals(places: usize) -> Format {
    let tail = if places == 0 { String::new() } else { format!(".{}", "0".repeat(places)) };
    Format::new().set_num_format(format!("#,##0{tail}"))
}

/// Rows and columns of a table of ours lie far below the limits of a sheet; one that does not is refused by the writer.
fn row_of(i: usize) -> u32 {
    u32::try_from(i).unwrap_or(u32::MAX)
}
fn column_of(i: usize) -> u16 {
    u16::try_from(i).unwrap_or(u16::MAX)
}

fn about(book: &mut Workbook, plan: &Plan, date: &str) -> Result<(), XlsxError> {
    let sheet = book.add_worksheet();
    sheet.set_name("About")?;
    sheet.set_column_width(0, 16)?.set_column_width(1, 90)?;
    let a = &plan.job.about;
    let invented = if a.demo { "invented demo data" } else { "" };
    let rows = [
        ("Job", a.name.as_str()),
        ("Place", &a.place),
        ("Client", &a.client),
        ("Date", date),
        ("Currency", &a.currency.0),
        ("Region", plan.region.name),
        ("Design basis", plan.basis.name),
        ("Data", invented),
        ("Units", "The unit stands last in the name of a column; lengths and levels are in metres."),
        ("Who decides", "Local rules and licensed practice decide; nothing here replaces them."),
    ];
    for (i, (label, text)) in rows.iter().filter(|(_, text)| !text.is_empty()).enumerate() {
        sheet.write_string_with_format(row_of(i), 0, *label, &bold())?;
        sheet.write_string_with_format(row_of(i), 1, *text, &Format::new().set_text_wrap())?;
    }
    Ok(())
}

/// Widest column, in characters; longer texts are wrapped.
const WIDEST: usize = 60;

fn sheet<'b>(book: &'b mut Workbook, name: &str, grid: &Grid) -> Result<&'b mut Worksheet, XlsxError> {
    let sheet = book.add_worksheet();
    sheet.set_name(name)?;
    for (c, column) in grid.columns.iter().enumerate() {
        let at = column_of(c);
        sheet.write_string_with_format(0, at, &column.name, &head())?;
        let (number, text) = (decimals(column.decimals), Format::new().set_text_wrap().set_align(FormatAlign::Top));
        let mut widest = column.name.chars().count();
        for (r, row) in grid.rows.iter().enumerate() {
            match row.get(c) {
                Some(Cell::Text(t)) if !t.is_empty() => {
                    widest = widest.max(t.chars().count());
                    sheet.write_string_with_format(row_of(r + 1), at, t, &text)?;
                }
                Some(Cell::Number(v)) if v.is_finite() => {
                    widest = widest.max(trim(*v, 0).len() + column.decimals + 2);
                    sheet.write_number_with_format(row_of(r + 1), at, *v, &number)?;
                }
                _ => {}
            }
        }
        sheet.set_column_width(at, (widest.min(WIDEST) + 2) as f64)?;
    }
    sheet.set_freeze_panes(1, 0)?;
    sheet.set_repeat_rows(0, 0)?;
    sheet.set_landscape().set_paper_size(A4).set_print_fit_to_pages(1, 0);
    if !grid.rows.is_empty() {
        sheet.autofilter(0, 0, row_of(grid.rows.len()), column_of(grid.columns.len() - 1))?;
    }
    Ok(sheet)
}

/// The number by which spreadsheets know A4.
const A4: u8 = 9;

/// A formula whose result is already known, so that a reader that does not reckon shows it too.
fn formula(text: String, result: f64) -> Formula {
    Formula::new(text).set_result(format!("{result}"))
}

/// A column of amounts: a product where it gives the amount to the cent, and the bare amount where it does not (a price
/// by the metre of a bar that is counted by the piece).
fn amounts(sheet: &mut Worksheet, grid: &Grid, quantity: usize, rate: usize, amount: usize) -> Result<(), XlsxError> {
    for (r, row) in grid.rows.iter().enumerate() {
        let (Cell::Number(q), Cell::Number(p), Cell::Number(sum)) = (&row[quantity], &row[rate], &row[amount]) else {
            continue;
        };
        if (q * p - sum).abs() < 0.004_999 {
            let at = row_of(r + 1);
            let (a, b) = (row_col_to_cell(at, column_of(quantity)), row_col_to_cell(at, column_of(rate)));
            sheet.write_formula_with_format(
                at,
                column_of(amount),
                formula(format!("=ROUND({a}*{b},2)"), *sum),
                &decimals(2),
            )?;
        }
    }
    Ok(())
}

/// `=SUM(...)` over the rows of a table in one column; `None` for a table without rows.
fn sum_of(grid: &Grid, column: usize) -> Option<String> {
    let last = row_of(grid.rows.len());
    let cell = |row| row_col_to_cell(row, column_of(column));
    (last > 0).then(|| format!("=SUM({}:{})", cell(1), cell(last)))
}

fn order(book: &mut Workbook, plan: &Plan) -> Result<(), XlsxError> {
    let grid = grids::order(plan);
    let places = (grid.place("bought"), grid.place("mass_kg"));
    let sheet = sheet(book, "Order", &grid)?;
    let (Some(bought), Some(mass)) = places else { return Ok(()) };
    // Rate and amount stand between what is bought and its mass.
    let (rate, amount) = (bought + 1, mass - 1);
    amounts(sheet, &grid, bought, rate, amount)?;
    let at = row_of(grid.rows.len() + 1);
    sheet.write_string_with_format(at, 0, "Sum", &bold())?;
    let sums = [(amount, plan.take_off.sum().amount(), 2), (mass, plan.take_off.mass().to_kg(), 1)];
    for (column, result, places) in sums {
        if let Some(text) = sum_of(&grid, column) {
            sheet.write_formula_with_format(
                at,
                column_of(column),
                formula(text, result),
                &decimals(places).set_bold(),
            )?;
        }
    }
    Ok(())
}

fn quote(book: &mut Workbook, plan: &Plan) -> Result<(), XlsxError> {
    let grid = grids::quote_lines(plan);
    let amount = grid.columns.len() - 1;
    let (quantity, rate, share) = (amount - 3, amount - 1, amount - 1);
    let sheet = sheet(book, "Quote", &grid)?;
    amounts(sheet, &grid, quantity, rate, amount)?;
    let first = row_of(grid.rows.len() + 1);
    let cell = |k: u32, column: usize| row_col_to_cell(first + k, column_of(column));
    let (net, overhead, margin, before_tax, tax) =
        (cell(0, amount), cell(1, amount), cell(2, amount), cell(3, amount), cell(4, amount));
    let formulas = [
        sum_of(&grid, amount).unwrap_or("=0".into()),
        format!("=ROUND({net}*{},2)", cell(1, share)),
        format!("=ROUND(({net}+{overhead})*{},2)", cell(2, share)),
        format!("={net}+{overhead}+{margin}"),
        format!("=ROUND({before_tax}*{},2)", cell(4, share)),
        format!("={before_tax}+{tax}"),
    ];
    for (i, ((name, share_of, sum), text)) in grids::sums(plan).into_iter().zip(formulas).enumerate() {
        let at = first + row_of(i);
        sheet.write_string_with_format(at, 0, name, &bold())?;
        if let Some(s) = share_of {
            sheet.write_number_with_format(at, column_of(share), s, &Format::new().set_num_format("0.0##%"))?;
        }
        let look = decimals(2).set_bold();
        sheet.write_formula_with_format(at, column_of(amount), formula(text, sum.amount()), &look)?;
    }
    Ok(())
}
