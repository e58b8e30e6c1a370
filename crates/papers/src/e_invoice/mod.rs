//! An invoice or a credit note as programs of others read it: EN 16931, written in the syntax of
//! UN/CEFACT (CII), as Factur-X lays it into the paper's PDF.
//!
//! The model, its rules and its syntax are a library's; here its terms are filled from the same
//! values as the paper. What the rules refuse is not written, and what is missing is named.

mod lacking;
mod terms;

pub use lacking::Lack;

use en16931::{En16931, Validated};
use en16931_formats::Syntax;
use lacking::{from_rules, lacking};
use shop::Amount;
use shop::record::v1::codes::PayerForm;
use shop::view::{CreditView, InvoiceView, OrderView};

/// What the file is called within a PDF, as Factur-X wants it.
pub const FILE_NAME: &str = "factur-x.xml";

/// An e-invoice.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct EInvoice {
    /// The document.
    pub xml: String,
}

/// The paper that it is made of.
#[derive(Debug, Clone, Copy)]
pub enum Of<'a> {
    Invoice(&'a InvoiceView),
    Credit(&'a CreditView),
}

impl<'a> Of<'a> {
    /// The paper's number; none on an invoice that is not written, or older than numbers are.
    fn number(self) -> Option<&'a str> {
        match self {
            Self::Invoice(invoice) => invoice.number.as_deref(),
            Self::Credit(note) => Some(&note.number),
        }
    }

    fn day(self) -> &'a str {
        match self {
            Self::Invoice(invoice) => &invoice.day,
            Self::Credit(note) => &note.day,
        }
    }

    fn payer(self) -> PayerForm {
        match self {
            Self::Invoice(invoice) => invoice.payer,
            Self::Credit(note) => note.payer,
        }
    }

    fn taxed(self) -> &'a Result<shop::view::TaxedView, shop::view::NotTaxed> {
        match self {
            Self::Invoice(invoice) => &invoice.taxed,
            Self::Credit(note) => &note.taxed,
        }
    }

    /// Before tax, tax, with tax.
    fn sums(self) -> [&'a Amount; 3] {
        match self {
            Self::Invoice(invoice) => [&invoice.net, &invoice.tax, &invoice.gross],
            Self::Credit(note) => [&note.net, &note.tax, &note.gross],
        }
    }
}

/// Whether this shop's papers are to have e-invoices in them: it has said which country it is in,
/// or that the rules of the European Union hold there.
#[must_use]
pub fn is_wanted(order: &OrderView) -> bool {
    let papers = &order.papers;
    papers.place.as_deref() == Some("eu") || !papers.letterhead.postal.country.is_empty()
}

/// The e-invoice of a paper.
///
/// # Errors
/// Everything that is missing for one.
pub fn e_invoice(order: &OrderView, of: Of<'_>) -> Result<EInvoice, Vec<Lack>> {
    let lacks = lacking(order, of);
    if !lacks.is_empty() {
        return Err(lacks);
    }
    let invoice = terms::invoice(order, of).map_err(|lack| vec![lack])?;
    let proof = Validated::<En16931>::new(invoice)
        .map_err(|rejected| from_rules(rejected.report().fatal()))?;
    let written = en16931_formats::write(&proof, Syntax::Cii);
    Ok(EInvoice { xml: written.xml })
}
