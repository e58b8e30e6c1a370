//! How a form is tied to the core type it stands for.
//!
//! A form is written down once, in [`crate::v1`], as a macro call that lists its
//! fields. The macros make the type that is stored and sent, and both directions
//! between it and the core type; if the core type changes, the form no longer
//! compiles, and whoever changed it must add to it instead of changing what has landed:
//! a field or a word in a block `since 2 { … }`. A value that uses none of it is written
//! as before, byte by byte, and says version 1; one that does says version 2, so that an
//! older program knows that it cannot read it.

use crate::phrases as say;
use thiserror::Error;

/// Why a form cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("{field}: {what}")]
pub struct Unreadable {
    /// The field, with dots from outside in.
    pub field: String,
    /// What is wrong with it and how to mend it.
    pub what: String,
}

impl Unreadable {
    /// A fault of a value itself.
    #[must_use]
    pub fn value(what: impl Into<String>) -> Self {
        Self {
            field: String::new(),
            what: what.into(),
        }
    }

    /// The same fault, seen from the field around it.
    #[must_use]
    pub fn within(mut self, field: &str) -> Self {
        self.field = match self.field.as_str() {
            "" => field.to_owned(),
            inner if inner.starts_with('[') => format!("{field}{inner}"),
            inner => format!("{field}.{inner}"),
        };
        self
    }
}

/// What came, as it is said back: in quotes, and not more of it than fits a line.
pub(crate) fn quoted(text: &str) -> String {
    const LONGEST: usize = 80;
    match text.char_indices().nth(LONGEST) {
        None => format!("{text:?}"),
        Some((end, _)) => format!("{:?}\u{2026}", &text[..end]),
    }
}

/// A stored and sent form of a core type.
pub trait Form: Sized {
    /// The core type.
    type Core;
    /// Writes the form of a core value.
    fn of(core: &Self::Core) -> Self;
    /// Reads the core value.
    ///
    /// # Errors
    /// [`Unreadable`]: which field, what is wrong, how to mend it.
    fn read(self) -> Result<Self::Core, Unreadable>;
    /// The lowest version that has everything this value says. Fields and words that were
    /// added `since` a version count only where they are used, so what says nothing new is
    /// still written as it always was.
    fn version(&self) -> u32 {
        1
    }
}

/// A field that was added to a form that had landed: it may be left out, and then nothing
/// of it is written.
pub trait Added {
    /// Whether it says nothing.
    fn is_absent(&self) -> bool;
}

impl<T> Added for Option<T> {
    fn is_absent(&self) -> bool {
        self.is_none()
    }
}

impl Added for String {
    fn is_absent(&self) -> bool {
        self.is_empty()
    }
}

impl<K, V> Added for std::collections::BTreeMap<K, V> {
    fn is_absent(&self) -> bool {
        self.is_empty()
    }
}

impl<T> Added for Vec<T> {
    fn is_absent(&self) -> bool {
        self.is_empty()
    }
}

/// Whether an added field is left out.
pub(crate) fn is_absent<T: Added>(field: &T) -> bool {
    field.is_absent()
}

/// The version an added field asks for.
pub(crate) fn version_of_added<T: Added + Form>(field: &T, since: u32) -> u32 {
    if field.is_absent() {
        return 1;
    }
    field.version().max(since)
}

macro_rules! plain {
    ($($ty:ty),*) => {$(
        impl Form for $ty {
            type Core = $ty;
            fn of(core: &$ty) -> Self {
                core.clone()
            }
            fn read(self) -> Result<$ty, Unreadable> {
                Ok(self)
            }
        }
    )*};
}
plain!(bool, u8, u16, u32, u64);

/// The longest plain text a form carries: the working of a calculation.
const LONGEST: usize = 64 * 1024;

impl Form for String {
    type Core = String;
    fn of(core: &String) -> Self {
        core.clone()
    }
    fn read(self) -> Result<String, Unreadable> {
        if self.len() > LONGEST {
            return Err(Unreadable::value(say::bytes_at_most(self.len(), LONGEST)));
        }
        Ok(self)
    }
}

impl<F: Form> Form for Option<F> {
    type Core = Option<F::Core>;
    fn of(core: &Self::Core) -> Self {
        core.as_ref().map(F::of)
    }
    fn read(self) -> Result<Self::Core, Unreadable> {
        self.map(F::read).transpose()
    }
    fn version(&self) -> u32 {
        self.as_ref().map_or(1, F::version)
    }
}

/// The most things one list in a form may hold.
const MOST: usize = 2_000;

impl<F: Form> Form for Vec<F> {
    type Core = Vec<F::Core>;
    fn of(core: &Self::Core) -> Self {
        core.iter().map(F::of).collect()
    }
    fn read(self) -> Result<Self::Core, Unreadable> {
        if self.len() > MOST {
            return Err(Unreadable::value(say::entries_at_most(self.len(), MOST)));
        }
        self.into_iter()
            .enumerate()
            .map(|(index, form)| form.read().map_err(|e| e.within(&format!("[{index}]"))))
            .collect()
    }
    fn version(&self) -> u32 {
        self.iter().map(F::version).max().unwrap_or(1)
    }
}

impl<K: Form + Ord, V: Form> Form for std::collections::BTreeMap<K, V>
where
    K::Core: Ord,
{
    type Core = std::collections::BTreeMap<K::Core, V::Core>;
    fn of(core: &Self::Core) -> Self {
        core.iter().map(|(k, v)| (K::of(k), V::of(v))).collect()
    }
    fn read(self) -> Result<Self::Core, Unreadable> {
        self.into_iter()
            .map(|(k, v)| Ok((k.read()?, v.read()?)))
            .collect()
    }
    fn version(&self) -> u32 {
        let of_values = self.values().map(V::version);
        of_values.max().unwrap_or(1)
    }
}

/// Codes: an enumeration without content, each value with the word it is stored as. The
/// word is taken as a `tt`: a `literal` would reach the description of the JSON door in a
/// wrapping that it does not see through, and it would name the variant instead.
macro_rules! codes {
    ($form:ident = $core:ident { $($variant:ident = $code:tt),* $(,)? }
        $(since $since:literal { $($later:ident = $word:tt),* $(,)? })*
    ) => {
        #[doc = concat!("The stored words of `", stringify!($core), "`.")]
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize, utoipa::ToSchema)]
        #[expect(missing_docs, reason = "each word is documented at its core type")]
        pub enum $form {
            $(#[serde(rename = $code)] $variant,)*
            $($(#[serde(rename = $word)] $later,)*)*
        }

        impl crate::form::Form for $form {
            type Core = $core;
            fn of(core: &$core) -> Self {
                match core {
                    $($core::$variant => Self::$variant,)*
                    $($($core::$later => Self::$later,)*)*
                }
            }
            fn read(self) -> Result<$core, crate::form::Unreadable> {
                Ok(match self {
                    $(Self::$variant => $core::$variant,)*
                    $($(Self::$later => $core::$later,)*)*
                })
            }
            fn version(&self) -> u32 {
                match self {
                    $(Self::$variant => 1,)*
                    $($(Self::$later => $since,)*)*
                }
            }
        }

        impl $form {
            /// The word a core value is stored as.
            #[must_use]
            pub fn word(core: $core) -> &'static str {
                match core {
                    $($core::$variant => $code,)*
                    $($($core::$later => $word,)*)*
                }
            }

            /// The core value of a stored word.
            #[must_use]
            pub fn from_word(word: &str) -> Option<$core> {
                match word {
                    $($code => Some($core::$variant),)*
                    $($($word => Some($core::$later),)*)*
                    _ => None,
                }
            }
        }
    };
}

/// One structure, field by field.
macro_rules! form {
    ($form:ident = $core:ident { $($field:ident : $ty:ty),* $(,)? }
        $(since $since:literal { $($added:ident : $added_ty:ty),* $(,)? })*
    ) => {
        #[doc = concat!("The form of [`", stringify!($core), "`].")]
        #[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize, utoipa::ToSchema)]
        #[serde(deny_unknown_fields)]
        #[expect(missing_docs, reason = "each field is documented at its core type")]
        pub struct $form {
            $(pub $field: $ty,)*
            $($(
                #[serde(default, skip_serializing_if = "crate::form::is_absent")]
                pub $added: $added_ty,
            )*)*
        }

        impl crate::form::Form for $form {
            type Core = $core;
            fn of(core: &$core) -> Self {
                Self {
                    $($field: <$ty as crate::form::Form>::of(&core.$field),)*
                    $($($added: <$added_ty as crate::form::Form>::of(&core.$added),)*)*
                }
            }
            fn read(self) -> Result<$core, crate::form::Unreadable> {
                Ok($core {
                    $($field: crate::form::Form::read(self.$field)
                        .map_err(|e| e.within(stringify!($field)))?,)*
                    $($($added: crate::form::Form::read(self.$added)
                        .map_err(|e| e.within(stringify!($added)))?,)*)*
                })
            }
            fn version(&self) -> u32 {
                let of_fields = [1, $(crate::form::Form::version(&self.$field),)*
                    $($(crate::form::version_of_added(&self.$added, $since),)*)*];
                of_fields.into_iter().max().unwrap_or(1)
            }
        }
    };
}

/// Kinds with content: each variant is one kind of event or request.
macro_rules! forms {
    ($form:ident = $core:ident {
        $($variant:ident = $kind:tt { $($field:ident : $ty:ty),* $(,)? }
            $(since $since:literal { $($added:ident : $added_ty:ty),* $(,)? })*
        ),* $(,)?
    }) => {
        #[doc = concat!("The forms of [`", stringify!($core), "`], by kind.")]
        #[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize, utoipa::ToSchema)]
        #[serde(deny_unknown_fields)]
        #[expect(missing_docs, reason = "each field is documented at its core type")]
        pub enum $form { $(
            #[serde(rename = $kind)]
            $variant {
                $($field: $ty,)*
                $($(
                    #[serde(default, skip_serializing_if = "crate::form::is_absent")]
                    $added: $added_ty,
                )*)*
            }
        ),* }

        impl crate::form::Form for $form {
            type Core = $core;
            fn of(core: &$core) -> Self {
                match core {
                    $($core::$variant { $($field,)* $($($added,)*)* } => Self::$variant {
                        $($field: <$ty as crate::form::Form>::of($field),)*
                        $($($added: <$added_ty as crate::form::Form>::of($added),)*)*
                    }),*
                }
            }
            fn read(self) -> Result<$core, crate::form::Unreadable> {
                match self {
                    $(Self::$variant { $($field,)* $($($added,)*)* } => Ok($core::$variant {
                        $($field: crate::form::Form::read($field)
                            .map_err(|e| e.within(stringify!($field)))?,)*
                        $($($added: crate::form::Form::read($added)
                            .map_err(|e| e.within(stringify!($added)))?,)*)*
                    })),*
                }
            }
            fn version(&self) -> u32 {
                match self {
                    $(Self::$variant { $($field,)* $($($added,)*)* } => {
                        let of_fields = [1, $(crate::form::Form::version($field),)*
                            $($(crate::form::version_of_added($added, $since),)*)*];
                        of_fields.into_iter().max().unwrap_or(1)
                    }),*
                }
            }
        }

        impl $form {
            /// Every kind there is.
            pub const KINDS: &[&str] = &[$($kind),*];
        }
    };
}

pub(crate) use {codes, form, forms};
