//! The commands and their options.

use crate::pipeline::{Output, pour_moment, tolerance};
use clap::{Args, Parser, Subcommand, ValueEnum};
use std::path::PathBuf;

/// Builds an outdoor kitchen island from one parameter file: solids, drawings, and a full-size counter template.
#[derive(Debug, Parser)]
#[command(
    name = "islandwright",
    version,
    arg_required_else_help = true,
    max_term_width = 100
)]
#[command(after_help = "\
Examples:
  islandwright new kitchen.yaml --shape corner     write a starter file
  islandwright check kitchen.yaml                  say what is wrong with it
  islandwright build kitchen.yaml                  build everything into out/kitchen/
  islandwright takeoff kitchen.yaml                what to cut and to buy, on the terminal
  islandwright pour kitchen.yaml                   which hours are fit to pour in, and the setting clock
  islandwright compare kitchen.yaml longer.yaml    what another design needs more or less of

The program computes; it does not license. Structure, gas, electricity, dust, wet cement and lifting can hurt people: \
the local code, the appliances' own instructions and licensed trades decide.")]
pub(super) struct Cli {
    #[command(subcommand)]
    pub(super) command: Command,
}

#[derive(Debug, Subcommand)]
pub(super) enum Command {
    New(NewArgs),
    Check(CheckArgs),
    Explain(ExplainArgs),
    Build(BuildArgs),
    Takeoff(TakeoffArgs),
    Pour(PourArgs),
    Compare(CompareArgs),
    Watch(WatchArgs),
    Schema(SchemaArgs),
    Completions(CompletionsArgs),
}

/// Write a commented starter file; never overwrites one
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  islandwright new kitchen.yaml
  islandwright new kitchen.yaml --shape u --units metric")]
pub(super) struct NewArgs {
    /// The file to write; it must not exist yet
    pub(super) file: PathBuf,
    /// The shape of the island
    #[arg(long, value_enum, default_value = "straight")]
    pub(super) shape: Shape,
    /// The units of the file
    #[arg(long, value_enum, default_value = "imperial")]
    pub(super) units: UnitsArg,
}

/// What shops sell beside what the program knows
#[derive(Debug, Args)]
pub(super) struct TradeArgs {
    /// A trade file with what shops sell; may be named several times, and the later one counts
    #[arg(long, value_name = "FILE")]
    pub(super) trade: Vec<PathBuf>,
}

/// Say what is wrong with a design: whether it holds, fits and is safe, with the source of each limit
#[derive(Debug, Args)]
#[command(after_help = "\
Exit code: 0 nothing wrong or cautions only, 1 a check fails, 2 the file cannot be used.

Examples:
  islandwright check kitchen.yaml
  islandwright check kitchen.yaml --fix-hints
  islandwright check kitchen.yaml --all
  islandwright check kitchen.yaml --format json")]
pub(super) struct CheckArgs {
    /// The parameter file
    pub(super) file: PathBuf,
    /// How the findings are printed
    #[arg(long, value_enum, default_value = "text")]
    pub(super) format: Format,
    /// Print what passes, too; JSON always has it
    #[arg(long)]
    pub(super) all: bool,
    /// With each failure, the smallest change of one key that turns it, found by trying; takes some seconds
    #[arg(long)]
    pub(super) fix_hints: bool,
    #[command(flatten)]
    pub(super) trade: TradeArgs,
}

/// Print what a check asks, why, how it is reckoned and where its limits come from
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  islandwright explain                             list the checks
  islandwright explain slab-overhang-bending")]
pub(super) struct ExplainArgs {
    /// The code of the check, as findings show it; left out, the checks are listed
    pub(super) code: Option<String>,
    /// Print the whole page with every check, as docs/checks.md has it
    #[arg(long, conflicts_with = "code")]
    pub(super) all: bool,
}

/// Build everything and write it under out/<file stem>/
#[derive(Debug, Args)]
#[command(after_help = "\
What is written is listed in manifest.json. A file that the program did not write, or that was changed since, is never \
overwritten or deleted; a build that fails leaves the earlier output as it was.

Examples:
  islandwright build kitchen.yaml
  islandwright build kitchen.yaml --only template
  islandwright build kitchen.yaml --out /tmp/trial --tolerance 0.05mm --timings")]
pub(super) struct BuildArgs {
    /// The parameter file
    pub(super) file: PathBuf,
    /// The folder in which the island's own folder is made
    #[arg(long, default_value = "out", value_name = "DIR")]
    pub(super) out: PathBuf,
    /// Build only these; everything else stays as it is
    #[arg(long, value_enum, value_delimiter = ',', value_name = "WHAT")]
    pub(super) only: Vec<Only>,
    /// How far a chord may stand off the curve it is for, with its unit
    #[arg(long, default_value = "0.02 mm", value_parser = known_tolerance, value_name = "LENGTH")]
    pub(super) tolerance: String,
    /// The form of the title block on the drawings, instead of templates/title-block.yaml
    #[arg(long, value_name = "FILE")]
    pub(super) title_block: Option<PathBuf>,
    /// Say how long each stage took
    #[arg(long)]
    pub(super) timings: bool,
    #[command(flatten)]
    pub(super) trade: TradeArgs,
}

/// Print quantities, cut lists and what to buy
#[derive(Debug, Args)]
#[command(after_help = "\
Findings go to standard error. As CSV, each table begins with a line that names it, and an empty line parts it from the \
next; with --table there is nothing but that table.

Exit code: 0 nothing wrong or cautions only, 1 a check fails, 2 the file cannot be used.

Examples:
  islandwright takeoff kitchen.yaml
  islandwright takeoff kitchen.yaml --table cut-list
  islandwright takeoff kitchen.yaml --table order --format csv > order.csv
  islandwright takeoff kitchen.yaml --trade prices.yaml")]
pub(super) struct TakeoffArgs {
    /// The parameter file
    pub(super) file: PathBuf,
    /// How the tables are printed
    #[arg(long, value_enum, default_value = "table")]
    pub(super) format: Tabular,
    /// Print only this table, by its name
    #[arg(long, value_name = "NAME")]
    pub(super) table: Option<String>,
    #[command(flatten)]
    pub(super) trade: TradeArgs,
}

/// Print the pour plan: which hours of the forecast are fit, how long placing takes, when each step of finishing is due
#[derive(Debug, Args)]
#[command(after_help = "\
The forecast stands in the file, under 'pour'. The estimate of evaporation is good to ±40 %; nothing is promised beyond \
that. Findings about the pour go to standard error.

Exit code: 0 nothing wrong or cautions only, 1 a check of the pour fails, 2 the file cannot be used.

Examples:
  islandwright pour kitchen.yaml
  islandwright pour kitchen.yaml --at 2027-05-14T05:00
  islandwright pour kitchen.yaml --table pour-hours --format csv > hours.csv")]
pub(super) struct PourArgs {
    /// The parameter file
    pub(super) file: PathBuf,
    /// When placing begins, instead of what the file says under 'pour.at'
    #[arg(long, value_name = "MOMENT", value_parser = known_moment)]
    pub(super) at: Option<String>,
    /// A forecast as CSV, instead of the one in the file: time,air °F,humidity %,wind mph,sun W/m2
    #[arg(long, value_name = "FILE")]
    pub(super) forecast: Option<PathBuf>,
    /// How the tables are printed
    #[arg(long, value_enum, default_value = "table")]
    pub(super) format: Tabular,
    /// Print only this table, by its name
    #[arg(long, value_name = "NAME")]
    pub(super) table: Option<String>,
    #[command(flatten)]
    pub(super) trade: TradeArgs,
}

/// Print what differs between two designs in quantities, weight, money and findings, one line each
#[derive(Debug, Args)]
#[command(after_help = "\
Exit code: 0 nothing wrong with either or cautions only, 1 a check of one of them fails, 2 one of them cannot be used. \
Whether they differ does not change it.

Examples:
  islandwright compare kitchen.yaml kitchen-longer.yaml
  islandwright compare kitchen.yaml kitchen-longer.yaml --format json")]
pub(super) struct CompareArgs {
    /// The first parameter file
    pub(super) first: PathBuf,
    /// The second one, which the changes lead to
    pub(super) second: PathBuf,
    /// How the differences are printed
    #[arg(long, value_enum, default_value = "table")]
    pub(super) format: Lines,
    #[command(flatten)]
    pub(super) trade: TradeArgs,
}

/// Serve the build book on this machine and renew it when the file is saved; its page can write numbers into the file
#[derive(Debug, Args)]
#[command(after_help = "\
Only this machine can reach the page unless --address names another address. Ctrl-C stops.

Examples:
  islandwright watch kitchen.yaml
  islandwright watch kitchen.yaml --port 8200")]
pub(super) struct WatchArgs {
    /// The parameter file
    pub(super) file: PathBuf,
    /// The port; 0 for any that is free
    #[arg(long, default_value_t = 8100, value_name = "NUMBER")]
    pub(super) port: u16,
    /// The address; another than this machine's own lets others see the page and change the file
    #[arg(long, default_value = "127.0.0.1", value_name = "ADDRESS")]
    pub(super) address: std::net::IpAddr,
    #[command(flatten)]
    pub(super) trade: TradeArgs,
}

/// Print the JSON Schema of the parameter file or of trade files, for editors that complete and check them
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  islandwright schema > islandwright.schema.json
  islandwright schema --of trade > trade.schema.json
  islandwright schema --format markdown            every key and what it means")]
pub(super) struct SchemaArgs {
    /// JSON Schema, or a page for people
    #[arg(long, value_enum, default_value = "json")]
    pub(super) format: Described,
    /// Which file is described; the page for people describes both
    #[arg(long, value_enum, default_value = "parameters")]
    pub(super) of: DescribedFile,
}

/// Print a script that completes commands and options in a shell
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  islandwright completions bash > ~/.local/share/bash-completion/completions/islandwright
  islandwright completions fish > ~/.config/fish/completions/islandwright.fish")]
pub(super) struct CompletionsArgs {
    /// The shell
    #[arg(value_enum)]
    pub(super) shell: clap_complete::Shell,
}

/// The shape of a starter island.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum Shape {
    /// One run
    Straight,
    /// Two runs in an L
    Corner,
    /// Three runs in a U
    U,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum UnitsArg {
    /// Feet and inches
    Imperial,
    /// Millimetres
    Metric,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum Format {
    /// For people
    Text,
    /// For programs
    Json,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum Tabular {
    /// For people
    Table,
    /// For spreadsheets
    Csv,
    /// For programs
    Json,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum Lines {
    /// For people
    Table,
    /// For programs
    Json,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum Described {
    /// JSON Schema
    Json,
    /// A page of Markdown
    Markdown,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum DescribedFile {
    /// The parameter file
    Parameters,
    /// A trade file
    Trade,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum Only {
    /// Solids as STL
    Models,
    /// Elevations and plans
    Drawings,
    /// The full-size counter template
    Template,
    /// What to cut and to buy, workshop sheets and labels
    Takeoff,
    /// A small model to print in plastic
    ScaleModel,
    /// Ground, setting out, pour and order of work
    Site,
    /// What the checks found
    Checks,
    /// One page that shows it all
    Book,
}

impl Only {
    pub(super) fn output(self) -> Output {
        match self {
            Self::Models => Output::Models,
            Self::Drawings => Output::Drawings,
            Self::Template => Output::Template,
            Self::Takeoff => Output::Takeoff,
            Self::ScaleModel => Output::ScaleModel,
            Self::Site => Output::Site,
            Self::Checks => Output::Checks,
            Self::Book => Output::Book,
        }
    }
}

/// Refuses a tolerance while the arguments are read, so that the message names the option.
fn known_tolerance(text: &str) -> Result<String, String> {
    tolerance(text).map(|_| text.to_owned())
}

/// Refuses a moment while the arguments are read, so that the message names the option.
fn known_moment(text: &str) -> Result<String, String> {
    pour_moment(text)
}
