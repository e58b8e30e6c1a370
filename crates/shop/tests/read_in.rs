//! A table of customers and vehicles that another program wrote.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::{Bench, LOG};
use shop::read_in::{Becomes, ReadIn, look_at, read_in};
use shop::{Trouble, TroubleKind};

fn look(bench: &Bench, table: &str) -> Result<ReadIn, Trouble> {
    bench.look(|snap| look_at(snap, table))
}

fn done(bench: &Bench, who: &str, table: &str) -> Result<(usize, usize), Trouble> {
    let caller = bench.service.caller(Some(who), "desk").unwrap();
    read_in(&bench.service, &caller, table)
}

const TABLE: &str = "Kundenname;Telefon;Kennzeichen;Fahrzeug;FIN;Bemerkung\n\
    \"Weber, Anna\";0170 555 001;HH-AB 12;Marlin Combi 2014;1M8GDM9AXKP042788;treu\n\
    \"Weber, Anna\";0170 555 001;HH-AB 13;Osprey 3;;\n\
    Paz GmbH;;;;;\n\
    ;0170 1;HH-X 1;Osprey 3;;\n\
    Öz Can;0170 2;HH-Y 2;;;\n\
    ;;;;;\n";

#[test]
fn what_would_change_is_shown_before_anything_is_written() {
    let bench = Bench::new();
    let before = bench.service.world().unwrap().position;
    let read = look(&bench, TABLE).unwrap();
    assert_eq!((read.customers, read.vehicles, read.known()), (2, 2, 0));
    assert_eq!(read.passed_over, ["Bemerkung"]);
    let bad: Vec<(u64, &str)> = read.bad().collect();
    assert_eq!(
        bad,
        [
            (5, "it names no customer"),
            (6, "HH-Y 2 has no vehicle: write its maker and model"),
        ]
    );
    assert_eq!(
        read.rows[1].becomes,
        Becomes::New {
            customer: false,
            vehicle: true
        }
    );
    assert_eq!(bench.service.world().unwrap().position, before);

    assert_eq!(done(&bench, "ana", TABLE).unwrap(), (2, 2));
    let world = bench.service.world().unwrap();
    let anna = world.customers_saying("0170555001", 9).unwrap();
    assert_eq!(anna.len(), 1);
    assert_eq!(world.vehicles_of(&anna[0]).unwrap().len(), 2);
    assert_eq!(world.vehicles_saying("hhab12", 9).unwrap().len(), 1);
    // Read in once more nothing is new.
    let read = look(&bench, TABLE).unwrap();
    assert_eq!((read.customers, read.vehicles, read.known()), (0, 0, 3));
    assert_eq!(done(&bench, "ana", TABLE).unwrap(), (0, 0));
    shop::verify(bench.store.as_ref(), LOG, None).unwrap();
}

#[test]
fn what_is_known_from_the_desk_is_not_read_in_again() {
    let mut bench = Bench::new();
    bench.open("Ines Duarte", "Marlin Combi", "AB-12-CD");
    let table = "name,phone,plate,vehicle\nInes Duarte,0600 555 001,ab12cd,Marlin Combi 2014\n\
        Ines Duarte,0999 1,XX-1,Osprey\n";
    let read = look(&bench, table).unwrap();
    assert_eq!(read.rows[0].becomes, Becomes::Known);
    // Another number is another person of that name.
    assert_eq!(
        read.rows[1].becomes,
        Becomes::New {
            customer: true,
            vehicle: true
        }
    );
}

#[test]
fn what_is_no_such_table_is_said_with_what_to_do() {
    let bench = Bench::new();
    for (table, what) in [
        ("", "no column is called name"),
        ("plate,vehicle\nAB,Osprey\n", "only plate, vehicle"),
        ("\u{0}\u{1}", "no column is called name"),
    ] {
        let trouble = look(&bench, table).unwrap_err();
        assert_eq!(trouble.kind, TroubleKind::Unreadable, "{table:?}");
        assert!(trouble.what.contains(what), "{trouble:?}");
        assert!(!trouble.mend.is_empty());
    }
    let many: String = std::iter::once("name\n".to_owned())
        .chain((0..20_001).map(|nth| format!("Customer {nth}\n")))
        .collect();
    assert!(look(&bench, &many).unwrap_err().what.contains("more than"));
    // Who may not is told so, and nothing is written.
    assert_eq!(
        done(&bench, "ben", "name\nIda\n").unwrap_err().kind,
        TroubleKind::Refused
    );
}
