//! The terms of EN 16931, filled from the values of the paper.

use super::Of;
use super::lacking::Lack;
use crate::kinds::words::nought;
use crate::phrases as say;
use crate::wording::Wording;
use en16931::invoice::{
    Contact, Delivery, DocumentAllowanceCharge, DocumentTotals, LineVat, Party,
    PaymentInstructions, PostalAddress, PrecedingInvoice, PriceDetails, VatBreakdown,
};
use en16931::{
    Date, DocumentReference, Invoice, InvoiceAmount, InvoiceLine, InvoiceNote, Percentage,
    Quantity, UnitPriceAmount,
};
use jiff::civil::DateTime;
use rust_decimal::Decimal;
use shop::Amount;
use shop::record::form::Form as _;
use shop::record::v1::codes::ChargeForm;
use shop::view::{InvoiceView, OrderView, PostalView, TaxGroupView, TaxedLineView};

/// An hour, and a piece, as UN/ECE recommendation 20 calls them.
const HOUR: &str = "HUR";
const ONE: &str = "C62";

/// Taxed by its rate; exempt from it.
const TAXED: &str = "S";
const EXEMPT: &str = "E";

pub fn invoice(order: &OrderView, of: Of<'_>) -> Result<Invoice, Lack> {
    let papers = &order.papers;
    let wording = Wording::of(papers.letterhead.language.read().unwrap_or_default());
    let number = of.number().unwrap_or_default();
    let kind = match of {
        Of::Invoice(_) => "380",
        Of::Credit(_) => "381",
    };
    let taxed = of.taxed().as_ref().map_err(|_| unread(say::the_taxes()))?;
    let mut out = Invoice::builder(
        "urn:cen.eu:en16931:2017",
        number,
        date(of.day())?,
        kind,
        papers.currency.as_str(),
    )
    .seller(seller(order)?)
    .buyer(Party::new(
        order.row.customer.trim(),
        address(&papers.postal, &format!("/o/{}/mend", order.number))?,
    ))
    .build();
    for (nth, line) in taxed.lines.iter().enumerate() {
        let group = taxed.groups.get(line.group);
        let group = group.ok_or_else(|| unread(say::the_taxes()))?;
        out.lines.push(self::line(nth, line, group)?);
    }
    for group in &taxed.groups {
        out.allowances.extend(taken_off(group, wording)?);
        // Two taxes of one rate are one to EN 16931, which knows them by nothing else.
        let new = breakdown(order, of, group)?;
        let mut known = out.vat_breakdown.iter_mut();
        match known.find(|known| known.group_key() == new.group_key()) {
            Some(known) => {
                let sum = |one: InvoiceAmount, other| {
                    one.checked_add(other).map_err(|_| unread(say::the_sums()))
                };
                known.taxable_amount = sum(known.taxable_amount, new.taxable_amount)?;
                known.tax_amount = sum(known.tax_amount, new.tax_amount)?;
            }
            None => out.vat_breakdown.push(new),
        }
    }
    out.totals = totals(order, of, &out)?;
    out.notes.push(InvoiceNote::new(vehicle(order, wording)));
    match of {
        Of::Invoice(invoice) => {
            out.payment_terms = papers.letterhead.terms.clone();
            out.payment = papers
                .letterhead
                .bank
                .as_deref()
                .and_then(iban)
                .map(|iban| PaymentInstructions::sepa_credit_transfer(iban, None));
            out.delivery = delivered(order, invoice);
        }
        Of::Credit(note) => {
            out.kind = en16931::DocumentKind::CreditNote;
            out.notes.push(InvoiceNote::new(note.words.trim()));
            if let Some(number) = &note.invoice_number {
                let all = order.price.iter().flat_map(|price| &price.invoices);
                let mut all = all.filter(|one| one.number.as_ref() == Some(number));
                out.preceding_invoices.push(PrecedingInvoice {
                    reference: DocumentReference::new(number.as_str()),
                    issue_date: all.next().and_then(|one| date(&one.day).ok()),
                });
            }
        }
    }
    Ok(out)
}

fn unread(what: &str) -> Lack {
    Lack::of(say::as_it_can_hold(what), "")
}

fn date(day: &str) -> Result<Date, Lack> {
    Date::parse(day).map_err(|_| unread(say::its_day()))
}

/// A sum of at most two digits after the point, as EN 16931 has them.
fn amount(sum: &str) -> Result<InvoiceAmount, Lack> {
    let exact = sum.parse::<Decimal>().ok();
    let exact = exact.and_then(|sum| InvoiceAmount::from_decimal_exact(sum).ok());
    exact.ok_or_else(|| unread(&say::the_sum(sum)))
}

fn address(postal: &PostalView, at: &str) -> Result<PostalAddress, Lack> {
    PostalAddress::new(
        postal.street.trim(),
        postal.town.trim(),
        postal.postcode.trim(),
        &postal.country,
    )
    .map_err(|_| Lack::of(say::a_country(&postal.country), at))
}

fn seller(order: &OrderView) -> Result<Party, Lack> {
    let own = &order.papers.letterhead;
    let address = address(&own.postal, "/shop/letterhead")?;
    let mut seller = Party::new(order.papers.shop.trim(), address);
    let number = own.tax_number.as_deref().unwrap_or_default();
    let number: String = number.split_whitespace().collect();
    // A number that begins with two letters is one of value added tax.
    let mut first = number.chars();
    let is_vat = (0..2).all(|_| first.next().is_some_and(|one| one.is_ascii_uppercase()));
    if is_vat {
        seller.vat_identifier = Some(number);
    } else {
        seller.tax_registration = Some(number);
    }
    seller.contact = Contact {
        name: own
            .phone
            .as_ref()
            .or(own.mail.as_ref())
            .map(|_| order.papers.shop.clone()),
        phone: own.phone.clone(),
        email: own.mail.clone(),
    };
    Ok(seller)
}

fn vat(group: &TaxGroupView) -> Result<LineVat, Lack> {
    if group.exempt {
        return Ok(LineVat {
            category: EXEMPT.into(),
            rate: Some(Percentage::new(Decimal::ZERO)),
        });
    }
    let rate = group
        .percent
        .parse()
        .map_err(|_| unread(say::the_taxes()))?;
    Ok(LineVat {
        category: TAXED.into(),
        rate: Some(Percentage::new(rate)),
    })
}

fn line(nth: usize, line: &TaxedLineView, group: &TaxGroupView) -> Result<InvoiceLine, Lack> {
    /// Finer than any price is told.
    const PRICE_DIGITS: u32 = 6;
    let net = amount(&line.net)?;
    let told: Decimal = line.quantity.parse().map_err(|_| unread(say::how_many()))?;
    let told = told.round_dp(PRICE_DIGITS).abs();
    // A price is never below nought: what is given back has a count below nought.
    let count = if told.is_zero() { Decimal::ONE } else { told };
    let sum = net.into_decimal();
    let each = sum.abs().checked_div(count).unwrap_or(sum.abs());
    let signed = if sum.is_sign_negative() {
        -count
    } else {
        count
    };
    let vat = vat(group)?;
    let unit = match line.charge {
        ChargeForm::Labour => HOUR,
        _ => ONE,
    };
    let made = InvoiceLine::new(
        (nth + 1).to_string(),
        line.label.trim(),
        Quantity::new(signed),
        unit,
        net,
        vat.category,
        vat.rate,
    );
    Ok(made.with_price(PriceDetails {
        net_price: UnitPriceAmount::new(each.round_dp(PRICE_DIGITS).normalize()),
        ..PriceDetails::default()
    }))
}

/// What was written down of the lines under a tax.
fn taken_off(
    group: &TaxGroupView,
    wording: &Wording,
) -> Result<Option<DocumentAllowanceCharge>, Lack> {
    if nought(&Amount::new(group.off.as_str())) {
        return Ok(None);
    }
    Ok(Some(DocumentAllowanceCharge {
        amount: amount(&group.off)?,
        base_amount: None,
        percentage: None,
        vat: vat(group)?,
        reason: Some(wording.discount.to_owned()),
        reason_code: None,
    }))
}

fn breakdown(order: &OrderView, of: Of<'_>, group: &TaxGroupView) -> Result<VatBreakdown, Lack> {
    let vat = vat(group)?;
    let wording = Wording::of(order.papers.letterhead.language.read().unwrap_or_default());
    let of_invoice = match of {
        Of::Invoice(invoice) => Some(invoice),
        Of::Credit(note) => {
            let mut all = order.price.iter().flat_map(|price| &price.invoices);
            all.find(|one| one.command == note.invoice)
        }
    };
    let by = of_invoice.and_then(|invoice| invoice.exempt_by.as_deref());
    let reason = by.map(wording.exempt_by).filter(|_| group.exempt);
    Ok(VatBreakdown {
        taxable_amount: amount(&group.net)?,
        tax_amount: amount(&group.tax)?,
        category: vat.category,
        rate: vat.rate,
        exemption_reason: reason,
        exemption_reason_code: None,
    })
}

fn totals(order: &OrderView, of: Of<'_>, out: &Invoice) -> Result<DocumentTotals, Lack> {
    let [net, tax, gross] = of.sums();
    let large = |_| unread(say::the_sums());
    let lines = out.lines.iter().map(|line| line.net_amount);
    let off = out.allowances.iter().map(|off| off.amount);
    let off = InvoiceAmount::checked_sum(off).map_err(large)?;
    let gross = amount(gross.exact())?;
    let paid = match of {
        Of::Invoice(invoice) => paid(order, invoice)
            .map(|paid| amount(paid.exact()))
            .transpose()?,
        Of::Credit(_) => None,
    };
    let left = match paid {
        Some(paid) => gross.checked_sub(paid).map_err(large)?,
        None => gross,
    };
    Ok(DocumentTotals {
        line_total: InvoiceAmount::checked_sum(lines).map_err(large)?,
        allowance_total: (!off.is_zero()).then_some(off),
        taxable_total: amount(net.exact())?,
        vat_total: Some(amount(tax.exact())?),
        gross_total: gross,
        paid,
        due: left,
        ..DocumentTotals::default()
    })
}

/// What came in for an invoice: where it is the payer's only one and stands as it was written,
/// else nobody can say which money was for which.
fn paid(order: &OrderView, invoice: &InvoiceView) -> Option<Amount> {
    let price = order.price.as_ref()?;
    let own = |one: &&InvoiceView| one.payer == invoice.payer;
    let is_only = price.invoices.iter().filter(own).count() == 1;
    let has_back = price.credits.iter().any(|note| note.payer == invoice.payer);
    let mut totals = order.totals.iter();
    let total = totals.find(|total| total.payer == invoice.payer)?;
    let later = total.on_account.as_ref().and_then(Amount::number);
    let paid = total
        .paid
        .number()?
        .checked_sub(later.unwrap_or_default())?;
    let fits = paid > Decimal::ZERO && paid <= invoice.gross.number()?;
    (is_only && !has_back && total.gross == invoice.gross && fits).then(|| paid.into())
}

/// Whether anything of an invoice is still to be paid.
pub fn is_due(order: &OrderView, invoice: &InvoiceView) -> bool {
    paid(order, invoice).is_none_or(|paid| paid != invoice.gross) && !nought(&invoice.gross)
}

/// Which vehicle it is about.
fn vehicle(order: &OrderView, wording: &Wording) -> String {
    let papers = &order.papers;
    let told = [
        (wording.vehicle, order.row.vehicle.as_str()),
        (wording.plate, order.row.plate.as_str()),
        (wording.vin, papers.vin.as_str()),
        (
            wording.odometer,
            papers.odometer_in.as_deref().unwrap_or(""),
        ),
    ];
    let told = told.into_iter().filter(|(_, text)| !text.trim().is_empty());
    let told: Vec<String> = told.map(|(name, text)| format!("{name}: {text}")).collect();
    told.join(", ")
}

/// The day the vehicle was handed over, where it was.
fn delivered(order: &OrderView, invoice: &InvoiceView) -> Option<Delivery> {
    let left = order.left.as_ref()?;
    let at = DateTime::strptime("%a %d %b %Y, %H:%M", &left.at).ok()?;
    let day = Date::parse(&at.date().to_string()).ok()?;
    // What was written after it left was done by then.
    (Date::parse(&invoice.day).ok()? >= day).then(|| Delivery {
        date: Some(day),
        ..Delivery::default()
    })
}

/// The account within what is told of the bank, where its check digits hold (ISO 13616).
fn iban(bank: &str) -> Option<String> {
    let squeezed = |line: &str| -> String { line.split_whitespace().collect() };
    let words = bank.lines().map(squeezed);
    let is_of_account = |letter: char| letter.is_ascii_uppercase() || letter.is_ascii_digit();
    words
        .flat_map(|line| {
            let begins = line.char_indices().map(|(at, _)| at);
            let from: Vec<String> = begins
                .map(|at| {
                    line[at..]
                        .chars()
                        .take_while(|one| is_of_account(*one))
                        .collect()
                })
                .collect();
            from
        })
        .find(|account| checks_out(account))
}

fn checks_out(account: &str) -> bool {
    let letters = account.as_bytes();
    let begins = letters.len() >= 15
        && letters.len() <= 34
        && letters[..2].iter().all(u8::is_ascii_uppercase)
        && letters[2..4].iter().all(u8::is_ascii_digit);
    if !begins {
        return false;
    }
    let turned = letters[4..].iter().chain(&letters[..4]);
    let rest = turned.fold(0u32, |rest, letter| match letter {
        b'0'..=b'9' => (rest * 10 + u32::from(letter - b'0')) % 97,
        _ => (rest * 100 + u32::from(letter - b'A') + 10) % 97,
    });
    rest == 1
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The account is the one that the library's documentation gives as valid; ISO 13616 was
    /// not at hand.
    #[test]
    fn an_account_is_found_by_its_check_digits() {
        let found = |bank: &str| iban(bank);
        let account = Some("DE02120300000000202051".to_owned());
        assert_eq!(found("IBAN DE02 1203 0000 0000 2020 51"), account);
        assert_eq!(
            found("Bank of the Harbour\nDE02120300000000202051, BIC BYLADEM1001"),
            account
        );
        assert_eq!(found("DE03 1203 0000 0000 2020 51"), None);
        assert_eq!(found("ask us"), None);
    }
}
