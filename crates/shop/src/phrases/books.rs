//! The lists of a month's money, as files for a spreadsheet.

use phrases::phrases;

phrases! {
    /// Where something is refused: the month whose lists are asked for.
    pub the_month = "the month", "der Monat";
    /// What is wrong with it.
    pub is_no_month(month) = "`{month}` is none", "„{month}“ ist keiner";
    /// How it is mended.
    pub write_a_month_as = "write it as 2026-11", "so schreiben: 2026-11";
    /// Head of a column.
    pub day = "day", "Tag";
    /// Head of a column: the number of an invoice or a credit note.
    pub number = "number", "Nummer";
    /// Head of a column: the number of an order.
    pub order = "order", "Auftrag";
    /// Head of a column.
    pub customer = "customer", "Kunde";
    /// Head of a column: who pays.
    pub payer = "payer", "Zahler";
    /// Head of a column.
    pub before_tax = "before tax", "netto";
    /// Head of a column.
    pub tax = "tax", "Steuer";
    /// Head of a column: with tax.
    pub total = "total", "brutto";
    /// Head of a column.
    pub currency = "currency", "Währung";
    /// Head of a column: the invoice that a credit note takes back from.
    pub of_invoice = "of invoice", "zu Rechnung";
    /// Head of a column: cash, card or transfer.
    pub how = "how", "Zahlungsart";
    /// Head of a column.
    pub amount = "amount", "Betrag";
    /// Head of a column: whether it was paid ahead.
    pub deposit = "deposit", "Anzahlung";
    /// Head of a column.
    pub month = "month", "Monat";
    /// Head of a column.
    pub per_cent = "per cent", "Prozent";
    /// Head of a column: the sum that a tax is taken on.
    pub on = "on", "Grundlage";
    /// Head of a column: whether the tax is not asked.
    pub exempt = "exempt", "befreit";
    /// In a column.
    pub yes = "yes", "ja";
    /// In a column.
    pub no = "no", "nein";
    /// In a column, who pays.
    pub of_customer = "customer", "Kunde";
    /// In a column, who pays.
    pub of_warranty = "warranty", "Garantie";
    /// In a column, who pays.
    pub of_goodwill = "goodwill", "Kulanz";
    /// In a column, how it was paid.
    pub cash = "cash", "bar";
    /// In a column, how it was paid.
    pub card = "card", "Karte";
    /// In a column, how it was paid.
    pub transfer = "transfer", "Überweisung";
    /// In a column, how it was paid: it is still to come in.
    pub on_account = "on-account", "auf Rechnung";
    /// In a column, how it was paid.
    pub cheque = "cheque", "Scheck";
}
