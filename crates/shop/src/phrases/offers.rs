//! What a price is made from: rates, jobs, discounts.

use phrases::phrases;

phrases! {
    /// Which hours the shop charges.
    pub by_the_book = "by the book", "nach Richtzeit";
    /// Which hours the shop charges.
    pub by_the_clock = "by the clock", "nach Uhr";
    /// Which hours the shop charges.
    pub the_lesser = "the lesser of book and clock", "was weniger ist, Richtzeit oder Uhr";
    /// The field of what a part costs the shop.
    pub cost = "cost", "Einkauf";
    /// A cost that is none.
    pub no_amount(text) = "{text} is no amount", "{text} ist kein Betrag";
    /// How a cost is mended.
    pub write_a_number = "write it as a number, such as 12.50", "als Zahl schreiben, etwa 12,50";
    /// The field of a discount.
    pub discount = "discount", "Nachlass";
    /// A discount that is none.
    pub no_per_cent_no_amount(text) = "{text} is neither a per cent nor an amount", "{text} ist weder Prozent noch Betrag";
    /// How a discount is mended.
    pub write_per_cent_or_amount = "write 10 % or 15.00", "10 % oder 15,00 schreiben";
    /// An entry of the price that is gone.
    pub entry_is_gone = "that entry is no longer in the price", "diese Zeile steht nicht mehr im Preis";
}
