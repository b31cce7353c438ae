//! `groundhold`: the whole job from the terminal.

mod demo;
mod files;
mod jobs;
mod newjob;
mod record;
mod reference;
mod regions;
mod say;
mod serve;
mod summary;

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Parser, Subcommand};

/// Turns a slope into ground that can be used: measures, shapes, checks, drains, digs, orders, sets out, and keeps the record.
#[derive(Parser)]
#[command(name = "groundhold", version, about, long_about = None)]
struct Cli {
    /// Machine-readable output.
    #[arg(long, global = true)]
    json: bool,
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    /// Ask a few questions and write a job: as little as a fall over a length.
    New(newjob::NewArgs),
    /// Plan a job and say on one screen what comes of it.
    Plan {
        /// Folder of the job, or its job file.
        #[arg(default_value = ".")]
        job: PathBuf,
        /// Only the findings, with their remedies and what each would cost.
        #[arg(long)]
        findings: bool,
        /// Say at which level each pad would balance cut and fill.
        #[arg(long)]
        balance: bool,
        /// Look at the walls as they are after so many years of service.
        #[arg(long, value_name = "YEARS", value_parser = clap::value_parser!(u32).range(0..=100))]
        year: Option<u32>,
    },
    /// Write every drawing as SVG.
    Draw(jobs::OutArgs),
    /// Write the drawing set and the calculation sheets as one PDF.
    Paper(jobs::OutArgs),
    /// Write the order: take-off, cutting list, quote, spreadsheet.
    Order(jobs::OutArgs),
    /// Write the set-out tables.
    Setout(jobs::OutArgs),
    /// Write down what was found on site, and say what changes.
    Found(record::FoundArgs),
    /// Write down what was built; it is held fixed from then on.
    Built(record::BuiltArgs),
    /// Apply a remedy to the job: change one field, and say what changes.
    Set(record::SetArgs),
    /// Compare two jobs: levels, lengths, order, price, findings.
    Compare {
        /// The first.
        before: PathBuf,
        /// The second.
        after: PathBuf,
    },
    /// Run one working on its own: `work earth-pressure/coulomb phi="30 deg" …`; without a name, list them.
    Work {
        /// Its name.
        name: Option<String>,
        /// Inputs as key=value with their units.
        given: Vec<String>,
    },
    /// Run published check cases.
    Verify {
        /// Files or folders of cases.
        #[arg(required = true)]
        files: Vec<PathBuf>,
    },
    /// Explain a finding by its code, or list all; `explain region CODE` lists what a region pack holds.
    Explain {
        /// The code, for example H-001; or `region`.
        code: Option<String>,
        /// After `region`: the pack's code, for example nz. Lists all packs where none is given.
        pack: Option<String>,
    },
    /// Print the JSON Schema of a job file, for editors.
    Schema,
    /// Plan the demo job and write everything it makes into a folder.
    Demo {
        /// Folder to write into.
        #[arg(long, default_value = "out/demo")]
        out: PathBuf,
        /// Then serve the page with the demo in it, and open a browser.
        #[arg(long)]
        open: bool,
        /// Port for the page.
        #[arg(long, requires = "open")]
        port: Option<u16>,
    },
    /// Serve the page on this machine, with a job behind it.
    Serve(serve::ServeArgs),
}

/// How a command ended.
pub enum Ending {
    /// Fine.
    Fine,
    /// Findings at `stop`.
    Stop,
    /// A reference case is missed.
    Missed,
}

/// Why a command could not be carried out: what to print.
pub type Refusal = String;

fn main() -> ExitCode {
    let cli = Cli::parse();
    match run(&cli) {
        Ok(Ending::Fine) => ExitCode::SUCCESS,
        Ok(Ending::Stop | Ending::Missed) => ExitCode::from(1),
        Err(why) => {
            eprintln!("{}", why.trim_end());
            ExitCode::from(2)
        }
    }
}

fn run(cli: &Cli) -> Result<Ending, Refusal> {
    let json = cli.json;
    match &cli.command {
        Command::New(args) => newjob::new_job(args),
        Command::Plan { job, findings, balance, year } => jobs::plan(job, json, *findings, *balance, *year),
        Command::Draw(args) => jobs::draw(args),
        Command::Paper(args) => jobs::paper(args),
        Command::Order(args) => jobs::order(args, json),
        Command::Setout(args) => jobs::setout(args, json),
        Command::Found(args) => record::found(args, json),
        Command::Built(args) => record::built(args, json),
        Command::Set(args) => record::set(args, json),
        Command::Compare { before, after } => record::compare(before, after, json),
        Command::Work { name, given } => reference::work(name.as_deref(), given, json),
        Command::Verify { files } => reference::verify(files, json),
        Command::Explain { code: Some(word), pack } if word == "region" => regions::explain(pack.as_deref(), json),
        Command::Explain { pack: Some(pack), .. } => {
            Err(format!("found `{pack}`, expected one code, or `region` and a pack's code"))
        }
        Command::Explain { code, .. } => reference::explain(code.as_deref()),
        Command::Schema => {
            say::line!("{}", groundhold_exchange::schema_json());
            Ok(Ending::Fine)
        }
        Command::Demo { out, open, port } => {
            let ending = demo::demo(out, json)?;
            if *open { serve::show(&out.join("job"), *port) } else { Ok(ending) }
        }
        Command::Serve(args) => serve::serve(args),
    }
}
