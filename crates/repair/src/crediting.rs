//! Credit notes: what is taken back of an invoice.

use crate::decide::{Context, Refusal};
use crate::decision::Decision;
use crate::ids::CommandId;
use crate::order::Order;
use crate::papers::{minor_digits, price};
use crate::text::Words;
use price::{Credit, CreditLine, Payer};

/// Takes back some of an invoice, as far as no other credit note did.
pub(crate) fn credit(
    order: &Order,
    context: &Context,
    invoice: CommandId,
    payer: Payer,
    lines: Vec<CreditLine>,
    words: Words,
) -> Result<Decision, Refusal> {
    let now = price(order).ok_or(Refusal::NotPriced)?;
    let written = now
        .invoices
        .iter()
        .find(|one| one.command == invoice)
        // The shop writes itself no invoice.
        .filter(|one| one.totals.contains_key(&payer) && payer != Payer::Goodwill)
        .ok_or(Refusal::NoSuchInvoice { payer })?;
    let billed = written.billed(payer, minor_digits(order))?;
    let lines: Vec<CreditLine> = lines
        .into_iter()
        .filter(|line| !line.amount.is_zero())
        .collect();
    let already = now.credited(&invoice, payer);
    let credit = billed
        .credit(&already, &lines)
        .map_err(|fault| Refusal::BadCredit { fault })?;
    let Credit {
        lines,
        shares,
        totals,
    } = credit;
    Ok(Decision::Credited {
        invoice,
        payer,
        lines,
        shares,
        totals,
        number: context.next_credit,
        words,
    })
}
