//! A shop's own words and rules.

use crate::branch::Branch;
use crate::phrases as say;
use crate::said::Grade;
use crate::table::{self, RawSort, RawWork, Sort, TableError};
use crate::vocabulary::{Vocabulary, build_names};
use crate::work::{Code, WorkSet};
use serde::Deserialize;
use states::Zone;

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields, default)]
struct File {
    also: Vec<Also>,
    sort: Vec<RawSort>,
    work: Vec<RawWork>,
    stricter: Vec<Stricter>,
}

/// Another name for a known sort.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields, default)]
struct Also {
    sort: String,
    names: Vec<String>,
}

/// More that a known sort asks.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields, default)]
struct Stricter {
    sort: String,
    shut: Vec<String>,
    owed: Vec<String>,
    caution: Vec<String>,
    safety: bool,
}

impl Vocabulary {
    /// These tables with a shop's own words and rules.
    ///
    /// The text is TOML, of the form of the shipped tables: `[[also]]` gives a known sort more
    /// names, `[[sort]]` adds a sort, `[[work]]` a work, `[[stricter]]` makes a known sort ask
    /// more. A name that the tables use for a thing of the safety class, or that holds nothing
    /// but words of such a name, may only be given to a sort that asks at least as much.
    ///
    /// # Errors
    ///
    /// [`TableError`], with the place, what is wrong, and how to mend it; nothing is taken then.
    ///
    /// ```
    /// use trade::{Vocabulary, says};
    ///
    /// let shop = Vocabulary::shipped().with(r#"
    ///     [[also]]
    ///     sort = "brake-pads"
    ///     names = ["stoppers"]
    /// "#)?;
    /// assert!(says("front stoppers", &shop)[0].safety);
    /// let lax = r#"
    ///     [[sort]]
    ///     id = "pads-we-know"
    ///     kind = "part"
    ///     shut = ["hand"]
    ///     names = ["brake pads"]
    /// "#;
    /// assert!(Vocabulary::shipped().with(lax).is_err());
    /// # Ok::<(), trade::TableError>(())
    /// ```
    pub fn with(&self, text: &str) -> Result<Vocabulary, TableError> {
        let file: File = table::parse(say::the_shops_own_table(), text)?;
        let mut out = self.clone();
        out.add_works(&file.work)?;
        for raw in &file.stricter {
            out.make_stricter(raw)?;
        }
        let mut added: Vec<(String, u32)> = Vec::new();
        for raw in &file.sort {
            let at = out.add_sort(raw)?;
            added.extend(
                raw.names
                    .iter()
                    .chain(&raw.german)
                    .map(|name| (name.clone(), at)),
            );
        }
        for also in &file.also {
            let at = out.known_sort(&also.sort)?;
            added.extend(also.names.iter().map(|name| (name.clone(), at)));
        }
        for (name, at) in &added {
            out.may_name(name, *at)?;
        }
        for (name, _) in &added {
            for word in crate::amounts::words_only(name, &crate::chunks::cut(name)) {
                out.words.learn(&word);
            }
        }
        // The shop's word comes first; where it means what the table has already, it is at least
        // as strict, as was seen above.
        added.append(&mut out.raw_names);
        out.raw_names = added;
        out.names = build_names(&out.words, &out.raw_names);
        out.additions += 1;
        Ok(out)
    }

    fn known_sort(&self, id: &str) -> Result<u32, TableError> {
        self.sort_ids
            .get(id)
            .copied()
            .ok_or_else(|| TableError::NoSuchWord {
                place: say::the_shops_own_table().to_string(),
                word: id.to_string(),
                meant: say::sort(),
                known: say::those_of_the_tables().to_string(),
            })
    }

    fn add_works(&mut self, works: &[RawWork]) -> Result<(), TableError> {
        for raw in works {
            if self.work(&raw.code).is_some() {
                return Err(TableError::Twice {
                    place: say::the_shops_own_table().to_string(),
                    id: raw.code.clone(),
                });
            }
            if self.works.len() >= WorkSet::MOST {
                return Err(TableError::TooManyWorks {
                    place: say::the_shops_own_table().to_string(),
                    most: WorkSet::MOST,
                });
            }
            let at = self.works.len();
            self.works
                .push(table::read_work(say::the_shops_own_table(), raw)?);
            for said in &raw.said_done {
                for word in crate::amounts::words_only(said, &crate::chunks::cut(said)) {
                    self.words.learn(&word);
                }
                let ids = self.words.name(said);
                self.said_done.push((ids, WorkSet::one(at)));
            }
        }
        Ok(())
    }

    fn make_stricter(&mut self, raw: &Stricter) -> Result<(), TableError> {
        let at = self.known_sort(&raw.sort)? as usize;
        let owed = table::works(say::the_shops_own_table(), &self.works, &raw.owed)?;
        let mut off = self.sorts[at].off;
        for word in &raw.shut {
            off = off.with(table::gate(say::the_shops_own_table(), word)?);
        }
        let sort = &mut self.sorts[at];
        sort.off = off;
        sort.owed = sort.owed.and(owed);
        sort.safety |= raw.safety;
        for caution in &raw.caution {
            let caution: Code = caution.as_str().into();
            if !sort.caution.contains(&caution) {
                sort.caution.push(caution);
            }
        }
        Ok(())
    }

    fn add_sort(&mut self, raw: &RawSort) -> Result<u32, TableError> {
        if self.sort_ids.contains_key(raw.id.as_str()) {
            return Err(TableError::Twice {
                place: say::the_shops_own_table().to_string(),
                id: raw.id.clone(),
            });
        }
        let source = |text: &str| Ok((Grade::Shop, text.into()));
        let default = (Branch::Unknown, Zone::Unknown);
        let sort = table::read_sort(
            say::the_shops_own_table(),
            default,
            raw,
            &self.works,
            &source,
        )?;
        let at = u32::try_from(self.sorts.len()).unwrap_or(u32::MAX);
        self.sort_ids.insert(sort.id.clone(), at);
        self.sorts.push(sort);
        Ok(at)
    }

    /// Whether a shop may give this name to that sort.
    fn may_name(&self, name: &str, at: u32) -> Result<(), TableError> {
        let words = crate::amounts::words_only(name, &crate::chunks::cut(name));
        if words.is_empty() {
            return Err(TableError::NoWord {
                place: say::the_shops_own_table().to_string(),
                name: name.to_string(),
            });
        }
        let ids = self.words.name(name);
        let fresh = words.iter().any(|word| !self.words.knows(word));
        let meant = self.names.exact(&ids).filter(|known| self.strict(*known));
        let mut solid: Vec<u32> = ids
            .iter()
            .copied()
            .filter(|id| !self.words.role_of(*id).filler && !self.words.is_side(*id))
            .collect();
        if solid.is_empty() {
            solid.clone_from(&ids);
        }
        let inside = || self.names.inside(&solid, &|sort| self.strict(sort));
        let meant = if fresh { None } else { meant.or_else(inside) };
        let Some(known) = meant.filter(|known| !self.covers(at, *known)) else {
            return Ok(());
        };
        Err(TableError::Laxer {
            place: say::the_shops_own_table().to_string(),
            name: name.to_string(),
            means: self.sort(known).id.to_string(),
        })
    }

    fn strict(&self, at: u32) -> bool {
        self.sort(at).safety
    }

    /// Whether one sort asks at least what the other asks.
    fn covers(&self, at: u32, known: u32) -> bool {
        let (this, that): (&Sort, &Sort) = (self.sort(at), self.sort(known));
        at == known
            || (this.safety
                && this.off.covers(that.off)
                && this.owed.has(that.owed)
                && (this.system == that.system || that.system == Branch::Unknown))
    }
}
