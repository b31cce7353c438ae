//! One working on its own, the published cases, and what a finding means.

use std::fs;
use std::path::{Path, PathBuf};

use groundhold_reference::{Outcome, read, read_text, run};
use groundhold_working::{Value, Working};

use crate::{Ending, Refusal, say};

/// Runs a working with inputs given as key=value, or lists all workings.
pub fn work(name: Option<&str>, given: &[String], json: bool) -> Result<Ending, Refusal> {
    let all = groundhold_plan::workings();
    let Some(name) = name else {
        for w in &all {
            say::line!("{:<42} {}", w.name, w.title);
        }
        say::line!("\n`groundhold work NAME` shows what one takes.");
        return Ok(Ending::Fine);
    };
    let Some(working) = all.iter().find(|w| w.name == name).copied() else {
        let topic = name.split('/').next().unwrap_or_default();
        let near: Vec<&str> = all.iter().map(|w| w.name).filter(|n| n.contains(topic)).collect();
        let hint = if near.is_empty() {
            "`groundhold work` lists them".into()
        } else {
            format!("there are {}", near.join(", "))
        };
        return Err(format!("there is no working `{name}`; {hint}"));
    };
    if given.is_empty() {
        describe(working)?;
        return Ok(Ending::Fine);
    }
    let mut inputs: Vec<(&str, Value)> = vec![];
    for pair in given {
        let (key, text) = pair
            .split_once('=')
            .ok_or_else(|| format!("found `{pair}`, expected key=value, for example height=\"1.2 m\""))?;
        let unit = working.inputs.iter().find(|i| i.key == key).map_or(groundhold_working::Unit::NONE, |i| i.unit);
        let value = read_text(text, unit).map_err(|e| format!("{key}: {e}"))?;
        inputs.push((key, value));
    }
    let worked = working.work(&inputs).map_err(|e| e.to_string())?;
    if json {
        say::line!("{}", groundhold_exchange::worked_json(working, &worked));
        return Ok(Ending::Fine);
    }
    say::line!("{}\n{}\nSource: {}, {}\n", working.name, working.title, working.source.work, working.source.place);
    for l in &worked.lines {
        say::line!("  {}", line_text(l));
    }
    say::line!("");
    for (output, value) in working.outputs.iter().zip(&worked.values) {
        say::line!("  {:<28} {} {}", output.words, value_text(value), output.unit.0);
    }
    say::line!("\nNot for: {}", working.not_for);
    Ok(Ending::Fine)
}

fn line_text(l: &groundhold_working::Line) -> String {
    if l.symbol.is_empty() { l.formula.clone() } else { l.to_string() }
}

fn describe(w: &Working) -> Result<(), Refusal> {
    say::line!("{}\n{}\nSource: {}, {}\nNot for: {}\n", w.name, w.title, w.source.work, w.source.place, w.not_for);
    say::line!("takes");
    for i in w.inputs {
        let least = groundhold_quantity::trim(i.limits.least, 4);
        let most = groundhold_quantity::trim(i.limits.most, 4);
        let range = if i.limits.least.is_finite() { format!("{least} to {most} {}", i.unit.0) } else { "text".into() };
        let default = i.default.map_or(String::new(), |d| format!(", {d} if left out"));
        say::line!("  {:<16} {} ({range}{default})", i.key, i.words);
    }
    say::line!("gives");
    for o in w.outputs {
        say::line!("  {:<16} {} {}", o.key, o.words, o.unit.0);
    }
    Ok(())
}

fn value_text(v: &Value) -> String {
    let number = |x: &f64| {
        let digits = if x.abs() >= 1000.0 { 1 } else { 4 };
        groundhold_quantity::trim(*x, digits)
    };
    match v {
        Value::One(x) => number(x),
        Value::Many(xs) => xs.iter().map(number).collect::<Vec<_>>().join(", "),
        Value::Word(w) => w.clone(),
    }
}

/// Runs case files and prints what each topic gives.
pub fn verify(paths: &[PathBuf], json: bool) -> Result<Ending, Refusal> {
    let workings = groundhold_plan::workings();
    let mut missed = vec![];
    let mut report = vec![];
    let (mut cases, mut passed, mut known) = (0, 0, 0);
    for file in case_files(paths)? {
        let text = fs::read_to_string(&file).map_err(|e| format!("{}: {e}", file.display()))?;
        let list = read(&text).map_err(|e| format!("{}: {e}", file.display()))?;
        let outcomes: Vec<Outcome> = list.iter().map(|c| run(c, &workings)).collect();
        let agree = outcomes.iter().filter(|o| o.agrees()).count();
        let misses = outcomes.iter().filter(|o| !o.agrees() && o.miss.is_some()).count();
        let topic = file.file_stem().map_or(String::new(), |s| s.to_string_lossy().into_owned());
        if !json {
            say::line!(
                "{topic:<14} {agree:>4} of {:<4} agree{}",
                outcomes.len(),
                if misses > 0 { format!(", {misses} known misses") } else { String::new() }
            );
        }
        for o in outcomes.iter().filter(|o| !o.is_fine()) {
            missed.push(complaint(o));
        }
        (cases, passed, known) = (cases + outcomes.len(), passed + agree, known + misses);
        report.push((topic, outcomes));
    }
    if json {
        say::line!("{}", groundhold_exchange::verify_json(&report));
    } else {
        for m in &missed {
            say::line!("{m}");
        }
        say::line!("{passed} of {cases} published figures agree, {known} known misses, {} unexpected", missed.len());
    }
    Ok(if missed.is_empty() { Ending::Fine } else { Ending::Missed })
}

fn complaint(o: &Outcome) -> String {
    if let Some(why) = &o.refused {
        return format!("  {}: {why}", o.id);
    }
    if o.agrees() {
        return format!("  {}: a known miss that now agrees; take its `miss` out", o.id);
    }
    let wrong: Vec<String> = o
        .compared
        .iter()
        .filter(|c| !c.agrees)
        .map(|c| {
            format!(
                "{} expected {}, found {}",
                c.key,
                value_text(&c.expected),
                c.found.as_ref().map_or("nothing".into(), value_text)
            )
        })
        .collect();
    format!("  {}: {}", o.id, wrong.join("; "))
}

fn case_files(paths: &[PathBuf]) -> Result<Vec<PathBuf>, Refusal> {
    let mut files = vec![];
    for path in paths {
        if !path.is_dir() {
            files.push(path.clone());
            continue;
        }
        let entries = fs::read_dir(path).map_err(|e| format!("{}: {e}", path.display()))?;
        files.extend(entries.flatten().map(|e| e.path()).filter(|p| is_toml(p)));
    }
    files.sort();
    Ok(files)
}

fn is_toml(p: &Path) -> bool {
    p.extension().is_some_and(|e| e == "toml") && p.file_stem().is_some_and(|s| s != "sources")
}

/// Explains a finding, or lists all.
pub fn explain(code: Option<&str>) -> Result<Ending, Refusal> {
    let kinds = groundhold_plan::finding_kinds();
    let Some(code) = code else {
        for k in &kinds {
            say::line!("{}  {:<6} {}", k.code, k.severity.word(), k.name);
        }
        return Ok(Ending::Fine);
    };
    let kind = kinds.iter().find(|k| k.code.eq_ignore_ascii_case(code));
    let Some(k) = kind else { return Err(format!("there is no finding `{code}`; `groundhold explain` lists them")) };
    say::line!(
        "{} {} ({})\n\nWhy it matters: {}\n\nKnown from: {}\n\nWhen it is wrong: {}",
        k.code,
        k.name,
        k.severity.word(),
        k.why,
        k.source,
        k.when_wrong
    );
    Ok(Ending::Fine)
}
