//! What does a region pack hold, row by row, who says so, and how far is that confirmed?

use groundhold_build::{REGIONS, Region, Row, region, rows};
use serde_json::{Value, json};

use crate::{Ending, Refusal, say};

/// Lists the rows of a pack with source and status, or all packs.
///
/// # Errors
/// Where there is no such pack.
pub fn explain(code: Option<&str>, as_json: bool) -> Result<Ending, Refusal> {
    let Some(code) = code else {
        if as_json {
            let all: Vec<Value> = REGIONS.iter().map(|r| json!({ "code": r.code, "name": r.name })).collect();
            say::line!("{}", Value::Array(all));
        } else {
            for r in REGIONS {
                say::line!("{:<12} {}", r.code, r.name);
            }
        }
        return Ok(Ending::Fine);
    };
    let Some(pack) = region(code) else {
        let known: Vec<&str> = REGIONS.iter().map(|r| r.code).collect();
        return Err(format!("found `{code}`, expected one of {}", known.join(", ")));
    };
    if as_json {
        say::line!("{}", as_value(pack));
    } else {
        say::text(&as_text(pack))?;
    }
    Ok(Ending::Fine)
}

fn as_value(pack: &Region) -> Value {
    let row = |r: Row| {
        json!({
            "question": r.question,
            "answer": r.answer,
            "source": r.status.map(|_| r.source),
            "status": r.status.map(groundhold_build::Status::words),
        })
    };
    let all: Vec<Value> = rows(pack).into_iter().map(row).collect();
    json!({ "code": pack.code, "name": pack.name, "date": pack.date_read, "rows": all, "notes": pack.notes })
}

fn as_text(pack: &Region) -> String {
    let mut out = format!(
        "{} ({}), a snapshot of {}. Never complete: {} decides.\n",
        pack.name, pack.code, pack.date_read, pack.words.office
    );
    let mut question = "";
    for r in rows(pack) {
        if r.question != question {
            question = r.question;
            out += &format!("\n{question}\n");
        }
        match (r.answer, r.status) {
            (Some(answer), Some(status)) => out += &format!("  {answer}\n      {}; {}\n", r.source, status.words()),
            _ => out += "  not known: ask\n",
        }
    }
    out += "\nnotes\n";
    for n in pack.notes {
        out += &format!("  {n}\n");
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pack_shows_sources_and_says_what_it_does_not_know() {
        let text = as_text(region("nz").unwrap());
        assert!(text.contains("Building Act 2004 (New Zealand)") && text.contains("not known: ask"), "{text}");
        let value = as_value(region("generic").unwrap());
        assert_eq!(value["rows"][0]["answer"], Value::Null);
        assert!(explain(Some("atlantis"), false).err().unwrap().contains("found `atlantis`, expected one of"));
    }
}
