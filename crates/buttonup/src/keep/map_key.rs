//! The key with which the shop signs maps that it sends: made when it is wanted first, kept
//! beside the record, readable by its owner only.

use super::{Place, own};
use crate::answer::Wrong;
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use shop::Signer;
use std::fs;
use std::io::ErrorKind;

/// The shop's key.
pub fn signer(place: &Place) -> Result<Signer, Wrong> {
    let folder = place.data.join("network");
    let file = folder.join("maps.key");
    let fault = |error: &dyn std::fmt::Display| {
        Wrong::input(
            file.display().to_string(),
            error.to_string(),
            "see that the shop's folder can be read and written",
        )
    };
    if !file.exists() {
        make(&folder, &file).map_err(|error| fault(&error))?;
    }
    let text = fs::read_to_string(&file).map_err(|error| fault(&error))?;
    let kept = STANDARD
        .decode(text.trim())
        .map_err(|error| fault(&error))?;
    Ok(Signer::read(&kept)?)
}

/// Another program may make it at the same moment: the one whose file got the name counts.
fn make(folder: &std::path::Path, file: &std::path::Path) -> std::io::Result<()> {
    fs::create_dir_all(folder)?;
    #[cfg(unix)]
    fs::set_permissions(folder, std::os::unix::fs::PermissionsExt::from_mode(0o700))?;
    let key = Signer::make().map_err(|trouble| std::io::Error::other(trouble.what))?;
    let unfinished = own::beside(file, "new");
    own::write_new(&unfinished, &(STANDARD.encode(key) + "\n"))?;
    let named = fs::hard_link(&unfinished, file);
    fs::remove_file(&unfinished)?;
    match named {
        Err(error) if error.kind() != ErrorKind::AlreadyExists => Err(error),
        _ => own::sync_folder_of(file),
    }
}
