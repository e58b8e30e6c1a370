//! Requests about an order, and the decisions that answer them.

use super::basics::*;
use super::codes::*;
use super::money::{CreditLineForm, LessForm, ShareForm, TermsForm};
use crate::form::{form, forms};
use repair::price::{Entry, TaxOn, TaxRule, Totals};
use repair::{Decision, Request, StatedNeed, StatedWork};
use std::collections::BTreeMap;

form! { StatedNeedForm = StatedNeed {
    item: ItemIdForm,
    at: Vec<u16>,
    to: StateForm,
    need: NeedForm,
} }

form! { StatedWorkForm = StatedWork {
    item: ItemIdForm,
    to: StateForm,
    work: WorkIsForm,
    words: Option<WordsForm>,
    until: UntilForm,
} since 2 {
    named: Option<ItemIdForm>,
    sort: Option<TokenForm>,
} }

form! { EntryForm = Entry {
    line: Option<LineRefForm>,
    charge: ChargeForm,
    label: Option<LabelForm>,
    quantity: DecimalForm,
    each: DecimalForm,
    payer: PayerForm,
} since 3 {
    less: Vec<LessForm>,
} }

form! { TaxOnForm = TaxOn {
    labour: bool,
    parts: bool,
    other: bool,
} }

form! { TaxRuleForm = TaxRule {
    name: ShortForm,
    percent: DecimalForm,
    on: TaxOnForm,
} since 3 {
    kinds: Vec<ChargeForm>,
    payers: Vec<PayerForm>,
    compound: bool,
    included: bool,
} }

form! { TotalsForm = Totals {
    net: DecimalForm,
    tax: DecimalForm,
    gross: DecimalForm,
} }

forms! { DecisionForm = Decision {
    Opened = "opened" {
        number: u64,
        vehicle: VehicleIdForm,
        customer: CustomerIdForm,
        currency: ShortForm,
        minor_digits: u32,
    },
    Adopted = "adopted" {
        map: MapIdForm,
        version: u32,
        needs: Vec<StatedNeedForm>,
        work: Vec<StatedWorkForm>,
    },
    Priced = "priced" {
        entries: Vec<EntryForm>,
        taxes: Vec<TaxRuleForm>,
        totals: BTreeMap<PayerForm, TotalsForm>,
    } since 2 {
        written_down: BTreeMap<PayerForm, DecimalForm>,
        invoiced: Vec<CommandIdForm>,
        after: Vec<CommandIdForm>,
    } since 3 {
        terms: Option<TermsForm>,
    },
    WrittenDown = "written-down" {
        payer: PayerForm,
        amount: DecimalForm,
    } since 2 {
        left: Option<TotalsForm>,
        after: Vec<CommandIdForm>,
    },
    Charged = "charged" {
        totals: BTreeMap<PayerForm, TotalsForm>,
        written_down: BTreeMap<PayerForm, DecimalForm>,
    } since 2 {
        numbers: BTreeMap<PayerForm, u64>,
    },
    Credited = "credited" {
        invoice: CommandIdForm,
        payer: PayerForm,
        lines: Vec<CreditLineForm>,
        shares: Vec<ShareForm>,
        totals: TotalsForm,
        number: u64,
        words: WordsForm,
    },
    Waived = "waived" {
        gate: GateForm,
        reason: ReasonKeyForm,
        figure: String,
        prints: bool,
        words: WordsForm,
    },
    WaiverWithdrawn = "waiver-withdrawn" {
        waiver: CommandIdForm,
    },
    HandedOver = "handed-over" {
        leaves: LeavesForm,
        ending: EndingForm,
        known: Vec<ReasonKeyForm>,
        boxes: Option<u16>,
        signature: Option<FileForm>,
        signed_by: Option<WordsForm>,
        decided_at: TimeForm,
    },
    TakenBack = "taken-back" {
        words: WordsForm,
    },
    Voided = "voided" {
        words: WordsForm,
    },
} }

forms! { RequestForm = Request {
    Open = "open" {
        vehicle: VehicleIdForm,
        customer: CustomerIdForm,
    },
    Adopt = "adopt" {
        map: MapIdForm,
        version: u32,
        needs: Vec<StatedNeedForm>,
        work: Vec<StatedWorkForm>,
    },
    Price = "price" {
        entries: Vec<EntryForm>,
    } since 2 {
        after: Vec<CommandIdForm>,
    },
    AddToPrice = "add-to-price" {
        entries: Vec<EntryForm>,
    },
    WriteDown = "write-down" {
        payer: PayerForm,
    } since 2 {
        after: Vec<CommandIdForm>,
    },
    Charge = "charge" {} since 2 {
        after: Vec<CommandIdForm>,
    },
    Credit = "credit" {
        invoice: CommandIdForm,
        payer: PayerForm,
        lines: Vec<CreditLineForm>,
        words: WordsForm,
    },
    Waive = "waive" {
        gate: GateForm,
        reason: ReasonKeyForm,
        words: WordsForm,
    } since 2 {
        figure: String,
    },
    WithdrawWaiver = "withdraw-waiver" {
        waiver: CommandIdForm,
    },
    HandOver = "hand-over" {
        leaves: LeavesForm,
        ending: EndingForm,
        boxes: Option<u16>,
        signature: Option<FileForm>,
        signed_by: Option<WordsForm>,
    },
    TakeBack = "take-back" {
        words: WordsForm,
    },
    Void = "void" {
        words: WordsForm,
    },
} }
