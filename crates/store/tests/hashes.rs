//! The hashes, against values that another implementation (Python's hashlib and struct)
//! made from the written description. They freeze the form: a change here would make
//! every log that was ever written unreadable.

use std::collections::BTreeMap;

use store::{Command, Memory, NewEvent, Store, commitment, first_hash};

const SALT: [u8; 32] = {
    let mut bytes = [0; 32];
    let mut index = 0;
    while index < 32 {
        bytes[index as usize] = index;
        index += 1;
    }
    bytes
};

#[test]
fn the_hashes_are_those_that_another_implementation_makes() {
    let log = "Werkstatt Süd";
    assert_eq!(
        hex::encode(first_hash(log)),
        "5dd0fcaac14bfd1a3c2b76c8941103435077227415ffc44a09c74a437465ee77"
    );
    let store = Memory::new();
    let command = Command {
        log: log.to_owned(),
        command_id: "0195-1".to_owned(),
        digest: SALT,
        who: "ana".to_owned(),
        device: "tablet-1".to_owned(),
        device_seq: 41,
        happened_at: "2026-03-02T08:15:00+01:00".to_owned(),
        recorded_at: "2026-03-02T07:15:01Z".to_owned(),
        expected: BTreeMap::new(),
        events: vec![NewEvent {
            stream: "order-1".to_owned(),
            kind: "moved".to_owned(),
            version: 3,
            body: br#"{"item":"belt"}"#.to_vec(),
        }],
        private: Vec::new(),
        erase: Vec::new(),
    };
    let outcome = store.append(command).expect("it is well formed");
    assert_eq!(
        hex::encode(outcome.rows()[0].hash),
        "7268af31b3f985c530ae30b0ac9d98d425d7e5b93bfa021c694c1bb2ec3b5328"
    );
    assert_eq!(
        hex::encode(commitment(&SALT, b"Ms Vale")),
        "959697347675c81265eaf052497d22bb74e4b7bc536a6b2e3c3b5382d98617be"
    );
}
