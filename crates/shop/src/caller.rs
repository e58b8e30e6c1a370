//! Who asks: a person of the shop, with what they do in it, through which device.

use phrases::Language;
use repair::{PersonId, Role, Shop};
use std::collections::BTreeSet;

/// Who asks for something or says something.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Caller {
    /// The person; none before anybody was picked.
    pub person: Option<PersonId>,
    /// What they do in the shop; nothing for who does not belong to it.
    pub roles: BTreeSet<Role>,
    /// Whether the shop has nobody yet, so that whoever sets it up may.
    pub founding: bool,
    /// The device they use.
    pub device: String,
    /// What their screens speak.
    pub language: Language,
}

impl Caller {
    /// A person as the shop knows them now.
    #[must_use]
    pub fn of(shop: &Shop, person: Option<&str>, device: &str) -> Self {
        let people = shop.people();
        let found = person.and_then(|name| people.get_key_value(&PersonId::new(name)));
        Self {
            person: person.map(PersonId::new),
            roles: found
                .map(|(_, (_, roles))| roles.iter().copied().collect())
                .unwrap_or_default(),
            founding: people.is_empty(),
            device: device.to_owned(),
            language: spoken(shop.speaks(person.map(PersonId::new).as_ref())),
        }
    }

    /// Who once belonged to the shop, or used a device that was put out since: what they tapped
    /// before is still taken, as a fact, and decides nothing.
    #[must_use]
    pub fn late(person: &str, device: &str) -> Self {
        Self {
            person: Some(PersonId::new(person)),
            roles: BTreeSet::from([Role::Apprentice]),
            founding: false,
            device: device.to_owned(),
            language: Language::default(),
        }
    }

    /// The program itself, where it does what nobody asked for at that moment: erasures that
    /// fell due, daily copies, the demo.
    #[must_use]
    pub fn program() -> Self {
        Self {
            person: None,
            roles: BTreeSet::from([Role::Owner, Role::Desk, Role::Technician]),
            founding: false,
            device: "program".to_owned(),
            language: Language::default(),
        }
    }

    /// Whether they have one of these roles.
    #[must_use]
    pub fn has_any(&self, roles: &[Role]) -> bool {
        roles.iter().any(|role| self.roles.contains(role))
    }

    /// Whether a clock of theirs runs on an order's stages: they work on vehicles, and the order
    /// is theirs or nobody's. Who only looks on starts no clock.
    #[must_use]
    pub fn works_on(&self, assigned: &[String]) -> bool {
        let person = self.person.as_ref().map(PersonId::as_str);
        let theirs = assigned.iter().any(|one| Some(one.as_str()) == person);
        self.has_any(&[Role::Technician, Role::Apprentice, Role::Foreman])
            && (theirs || assigned.is_empty())
    }

    /// Whether they learn, and do nothing else in the shop.
    #[must_use]
    pub fn only_learns(&self) -> bool {
        self.roles.iter().eq([&Role::Apprentice])
    }

    /// Whether prices, sums and what the customer agreed to are sent to them.
    #[must_use]
    pub fn sees_prices(&self) -> bool {
        self.founding || self.has_any(crate::roles::PRICES)
    }
}

/// A language of the record as one of what is spoken.
pub(crate) fn spoken(language: repair::Language) -> Language {
    match language {
        repair::Language::English => Language::English,
        repair::Language::German => Language::German,
    }
}
