//! The keys of the shop's network, sealed with a word that the owner knows, so that they can go
//! along with every copy: who finds the copy cannot use them, and after a restore no phone has to
//! be let in anew.
//!
//! ```text
//!  DATA/network/authority.* maps.key ── word, argon2id ── ChaCha20-Poly1305 ──> keys.sealed
//!  backup: keys.sealed goes along            restore: it comes along; `open-keys` opens it
//! ```

use super::own;
use super::place::Place;
use crate::answer::{Answer, Wrong};
use argon2::Argon2;
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use clap::Args;
use ring::aead::{Aad, CHACHA20_POLY1305, LessSafeKey, Nonce, UnboundKey};
use serde::{Deserialize, Serialize};
use serde_json::json;
use std::collections::BTreeMap;
use std::fs;
use std::io::{self, IsTerminal, Write};
use std::path::{Path, PathBuf};

/// The name of the sealed file, in a shop's network folder and in a copy.
pub const SEALED: &str = "keys.sealed";
/// What is sealed, where it is there.
const KEYS: [&str; 4] = [
    "authority.pem",
    "authority.key",
    "authority.json",
    "maps.key",
];
/// The form of the file.
const FORM: u32 = 1;
/// Letters that a word has at least: it stands against somebody with the copy and all the time.
const SHORTEST: usize = 10;

/// Which shop's keys, and the word.
#[derive(Debug, Args)]
pub struct Keys {
    /// A file whose first line is the word; without it, it is asked for.
    #[arg(long, value_name = "FILE")]
    word_file: Option<PathBuf>,
    #[command(flatten)]
    place: Place,
}

#[derive(Serialize, Deserialize)]
struct Sealed {
    form: u32,
    salt: String,
    nonce: String,
    sealed: String,
}

/// Seals the keys that are there.
pub fn seal_keys(asked: &Keys) -> Result<Answer, Wrong> {
    let word = word(asked.word_file.as_deref(), true)?;
    let names = seal(&asked.place, &word)?;
    Ok(Answer {
        text: format!(
            "sealed: {}\nThey go along with each backup into a folder from now on. Keep the word where the copies are not: without it nobody can open them.",
            names.join(", ")
        ),
        json: json!({ "sealed": names }),
        good: true,
    })
}

/// Opens them in a shop's folder, after a restore.
pub fn open_keys(asked: &Keys) -> Result<Answer, Wrong> {
    let word = word(asked.word_file.as_deref(), false)?;
    let names = open(&asked.place, &word)?;
    Ok(Answer {
        text: format!("opened: {}", names.join(", ")),
        json: json!({ "opened": names }),
        good: true,
    })
}

/// Whether the keys are sealed, and whether there are any.
pub fn state(place: &Place) -> web::Keys {
    let folder = place.data.join("network");
    match (
        folder.join(SEALED).exists(),
        folder.join("authority.key").exists(),
    ) {
        (true, _) => web::Keys::Sealed,
        (false, true) => web::Keys::Open,
        (false, false) => web::Keys::None,
    }
}

/// Seals the keys with a word, in the place of what was sealed before.
pub fn seal(place: &Place, word: &str) -> Result<Vec<String>, Wrong> {
    if word.chars().count() < SHORTEST {
        return Err(Wrong::input(
            "the word",
            format!("it has fewer than {SHORTEST} letters"),
            "take a longer one; several words are easier to keep than signs",
        ));
    }
    let folder = place.data.join("network");
    let fault = |error: &dyn std::fmt::Display| fault(&folder, error);
    let mut keys = BTreeMap::new();
    for name in KEYS {
        match fs::read_to_string(folder.join(name)) {
            Ok(text) => drop(keys.insert(name, text)),
            Err(error) if error.kind() == io::ErrorKind::NotFound => {}
            Err(error) => return Err(fault(&error)),
        }
    }
    if keys.is_empty() {
        return Err(Wrong::input(
            folder.display().to_string(),
            "there are no keys yet",
            "serve the shop's network once with --shop-network: that makes them",
        ));
    }
    let salt = shop::Device::salt();
    let random = shop::Device::salt();
    let mut nonce = [0; 12];
    nonce.copy_from_slice(&random[..12]);
    let mut bytes = serde_json::to_vec(&keys).map_err(|error| fault(&error))?;
    key_of(word, &salt)
        .and_then(|key| {
            let nonce = Nonce::assume_unique_for_key(nonce);
            key.seal_in_place_append_tag(nonce, Aad::empty(), &mut bytes)
                .ok()
        })
        .ok_or_else(|| fault(&"it cannot be sealed"))?;
    let sealed = Sealed {
        form: FORM,
        salt: STANDARD.encode(salt),
        nonce: STANDARD.encode(nonce),
        sealed: STANDARD.encode(bytes),
    };
    let text = serde_json::to_string(&sealed).map_err(|error| fault(&error))?;
    write_over(&folder.join(SEALED), &text).map_err(|error| fault(&error))?;
    Ok(keys.into_keys().map(str::to_owned).collect())
}

/// Opens them. A key that is there already and is another one stays: a shop that served its
/// network with new keys has phones that know those.
fn open(place: &Place, word: &str) -> Result<Vec<String>, Wrong> {
    let folder = place.data.join("network");
    let file = folder.join(SEALED);
    let text = fs::read_to_string(&file).map_err(|error| match error.kind() {
        io::ErrorKind::NotFound => Wrong::input(
            file.display().to_string(),
            "no sealed keys are there",
            "restore a copy that was made after `buttonup seal-keys`",
        ),
        _ => fault(&folder, &error),
    })?;
    let odd = || {
        Wrong::input(
            file.display().to_string(),
            "it does not read as sealed keys",
            "restore it from another copy",
        )
    };
    let sealed: Sealed = serde_json::from_str(&text).map_err(|_| odd())?;
    if sealed.form != FORM {
        return Err(odd());
    }
    let bytes = |text: &str| STANDARD.decode(text).map_err(|_| odd());
    let (salt, nonce) = (bytes(&sealed.salt)?, bytes(&sealed.nonce)?);
    let nonce: [u8; 12] = nonce.try_into().map_err(|_| odd())?;
    let mut bytes = bytes(&sealed.sealed)?;
    let key = key_of(word, &salt).ok_or_else(odd)?;
    let opened = key
        .open_in_place(
            Nonce::assume_unique_for_key(nonce),
            Aad::empty(),
            &mut bytes,
        )
        .map_err(|_| Wrong {
            code: 1,
            place: "the word".to_owned(),
            what: "it does not open them".to_owned(),
            mend: "type it as it was when they were sealed; capitals and spaces count".to_owned(),
        })?;
    let keys: BTreeMap<String, String> = serde_json::from_slice(opened).map_err(|_| odd())?;
    let mut names = Vec::new();
    for (name, text) in &keys {
        if !KEYS.contains(&name.as_str()) {
            return Err(odd());
        }
        let to = folder.join(name);
        match fs::read_to_string(&to) {
            Ok(there) if there == *text => {}
            Ok(_) => {
                return Err(Wrong {
                    code: 1,
                    place: to.display().to_string(),
                    what: "another key is there already, and phones may know that one".to_owned(),
                    mend: "move it away first, if the sealed one is wanted".to_owned(),
                });
            }
            Err(_) => own::write_new(&to, text).map_err(|error| fault(&folder, &error))?,
        }
        names.push(name.clone());
    }
    Ok(names)
}

/// Takes the sealed keys along, into a copy or out of one.
pub fn take_along(from: &Path, to: &Path) -> io::Result<bool> {
    let text = match fs::read_to_string(from) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(false),
        read => read?,
    };
    if let Some(folder) = to.parent() {
        fs::create_dir_all(folder)?;
        #[cfg(unix)]
        fs::set_permissions(folder, std::os::unix::fs::PermissionsExt::from_mode(0o700))?;
    }
    own::write_new(to, &text)?;
    Ok(true)
}

fn key_of(word: &str, salt: &[u8]) -> Option<LessSafeKey> {
    let mut key = [0; 32];
    Argon2::default()
        .hash_password_into(word.as_bytes(), salt, &mut key)
        .ok()?;
    Some(LessSafeKey::new(
        UnboundKey::new(&CHACHA20_POLY1305, &key).ok()?,
    ))
}

/// The word: from a file, or asked for, twice where a slip would lock the keys up.
fn word(file: Option<&Path>, twice: bool) -> Result<String, Wrong> {
    let unread = |place: String, error: &io::Error| {
        Wrong::input(place, error.to_string(), "name the file with --word-file")
    };
    if let Some(file) = file {
        let text =
            fs::read_to_string(file).map_err(|error| unread(file.display().to_string(), &error))?;
        return Ok(text.lines().next().unwrap_or_default().to_owned());
    }
    let ask = |what: &str| -> Result<String, Wrong> {
        let asked = if io::stdin().is_terminal() {
            rpassword::prompt_password(format!("{what}: "))
        } else {
            let mut line = String::new();
            io::stdin().read_line(&mut line).map(|_| line)
        };
        let line = asked.map_err(|error| unread("the word".to_owned(), &error))?;
        Ok(line.trim_end_matches(['\r', '\n']).to_owned())
    };
    let word = ask("The word")?;
    if twice && io::stdin().is_terminal() && ask("Again")? != word {
        return Err(Wrong::input("the word", "the two differ", "type it again"));
    }
    Ok(word)
}

fn write_over(file: &Path, text: &str) -> io::Result<()> {
    let unfinished = own::beside(file, "new");
    let mut new = own::new_file(&unfinished)?;
    new.write_all(text.as_bytes())?;
    new.sync_all()?;
    fs::rename(&unfinished, file)?;
    own::sync_folder_of(file)
}

fn fault(folder: &Path, error: &dyn std::fmt::Display) -> Wrong {
    Wrong::input(
        folder.display().to_string(),
        error.to_string(),
        "see that the shop's folder can be read and written",
    )
}
