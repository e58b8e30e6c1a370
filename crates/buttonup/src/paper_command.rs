//! `buttonup paper`: the papers of an order, as PDF.

use crate::answer::{Answer, Wrong};
use crate::keep::Place;
use clap::{Args, ValueEnum};
use papers::{Asked, FORMATS, Format, Kind, Labels, SheetSize, e_invoice_of, make};
use serde_json::json;
use shop::record::v1::codes::PayerForm;
use shop::repair::Language;
use std::fs;
use std::path::PathBuf;
use std::sync::Arc;

/// Which paper of which order, and where to.
#[derive(Debug, Args)]
pub struct Paper {
    /// The order's number.
    order: u64,
    /// Which paper.
    #[arg(value_parser = kind)]
    kind: Kind,
    /// The file to write.
    #[arg(short, long, value_name = "FILE")]
    output: PathBuf,
    /// For whom.
    #[arg(long = "for", value_enum, default_value_t = Payer::Customer)]
    payer: Payer,
    /// The number of the invoice, such as INV-12, where an order has several.
    #[arg(long, value_name = "NUMBER")]
    invoice: Option<String>,
    /// The number of the credit note, such as CR-3, where an order has several.
    #[arg(long, value_name = "NUMBER")]
    credit: Option<String>,
    /// The sheet; without it, the one of the shop's place.
    #[arg(long, value_enum)]
    sheet: Option<Sheet>,
    /// The language; without it, that of the shop's papers.
    #[arg(long, value_enum)]
    language: Option<Tongue>,
    /// Where the program can be reached from a phone, for the codes on labels.
    #[arg(long, value_name = "ADDRESS")]
    address: Option<String>,
    /// The sheet of labels that tray labels are printed on, by the measures of a label; without it,
    /// plain paper to be cut.
    #[arg(long, value_parser = label_format)]
    labels: Option<&'static Format>,
    /// The first label that is left on a begun sheet of labels.
    #[arg(long, value_name = "NTH", default_value_t = 1, requires = "labels")]
    from: usize,
    /// Write the e-invoice of an invoice or a credit note by itself, as XML.
    #[arg(long)]
    e_invoice: bool,
    #[command(flatten)]
    place: Place,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
enum Payer {
    Customer,
    Warranty,
    Goodwill,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
enum Sheet {
    A4,
    Letter,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
enum Tongue {
    En,
    De,
}

/// A paper by its name.
fn kind(name: &str) -> Result<Kind, String> {
    Kind::named(name).ok_or_else(|| {
        let names = Kind::ALL.map(Kind::name).join(", ");
        format!("there is no such paper; name one of these: {names}")
    })
}

/// A sheet of labels by its name.
fn label_format(name: &str) -> Result<&'static Format, String> {
    Format::named(name).ok_or_else(|| {
        let names = FORMATS.each_ref().map(|format| format.name).join(", ");
        format!("there is no such sheet of labels; name one of these: {names}")
    })
}

/// Makes the paper and writes it to its file.
pub fn run(paper: &Paper) -> Result<Answer, Wrong> {
    let store = paper.place.write_existing()?.shared();
    paper.place.must_hold(store.as_ref())?;
    let service = shop::Service::open(store, &paper.place.log, Arc::new(jiff::Timestamp::now))?;
    let payer = match paper.payer {
        Payer::Customer => PayerForm::Customer,
        Payer::Warranty => PayerForm::Warranty,
        Payer::Goodwill => PayerForm::Goodwill,
    };
    let size = paper.sheet.map(|sheet| match sheet {
        Sheet::A4 => SheetSize::A4,
        Sheet::Letter => SheetSize::Letter,
    });
    let asked = |snap: &shop::Snapshot<'_>| -> Result<Asked, shop::Trouble> {
        Ok(Asked {
            payer,
            written: written(snap, paper)?,
            size,
            address: paper.address.clone(),
            language: paper.language.map(|tongue| match tongue {
                Tongue::En => Language::English,
                Tongue::De => Language::German,
            }),
            labels: Labels {
                format: paper.labels,
                from: paper.from,
            },
            ..Asked::of(paper.kind)
        })
    };
    let program = shop::Caller::program();
    let place = paper.output.display().to_string();
    let write = |content: &[u8]| {
        fs::write(&paper.output, content).map_err(|error| {
            Wrong::input(
                &*place,
                error.to_string(),
                "name a file that can be written",
            )
        })
    };
    if paper.e_invoice {
        let made = service.look(&program, |snap| {
            e_invoice_of(snap, paper.order, &asked(snap)?)
        })?;
        write(made.xml.as_bytes())?;
        return Ok(Answer {
            text: format!("{place}: the e-invoice, EN 16931 as CII"),
            json: json!({ "file": place, "standard": "EN 16931", "syntax": "CII" }),
            good: true,
        });
    }
    let made = service.look(&program, |snap| make(snap, paper.order, &asked(snap)?))?;
    write(&made.pdf)?;
    let pages = match made.pages {
        1 => "1 page".to_owned(),
        pages => format!("{pages} pages"),
    };
    Ok(Answer {
        text: format!("{place}: {}, {pages}", made.paper.title),
        json: json!({ "file": place, "title": made.paper.title, "pages": made.pages, "values": made.values }),
        good: true,
    })
}

/// The command that had the named invoice or credit note written.
fn written(snap: &shop::Snapshot<'_>, paper: &Paper) -> Result<Option<String>, shop::Trouble> {
    let order = shop::view::order(snap, paper.order)?;
    if let Some(number) = &paper.credit {
        let mut credits = order.price.iter().flat_map(|price| &price.credits);
        let found = credits.find(|credit| credit.number == *number);
        return found
            .map(|credit| Some(credit.command.clone()))
            .ok_or_else(|| {
                shop::Trouble::not_found(format!(
                    "order {} has no credit note {number}",
                    paper.order
                ))
            });
    }
    let Some(number) = &paper.invoice else {
        return Ok(None);
    };
    let mut invoices = order.price.iter().flat_map(|price| &price.invoices);
    let found = invoices.find(|invoice| invoice.number.as_ref() == Some(number));
    match found {
        Some(invoice) => Ok(Some(invoice.command.clone())),
        None => Err(shop::Trouble::not_found(format!(
            "order {} has no invoice {number}",
            paper.order
        ))),
    }
}
