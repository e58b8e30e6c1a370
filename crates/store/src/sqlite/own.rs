//! Files that only their owner may read: they hold names, plates and telephone numbers.

use std::fs::{self, File, OpenOptions};
use std::io;
use std::path::Path;

/// Makes a folder, if it is not there, that only its owner may look into.
pub(super) fn make_folder(path: &Path) -> io::Result<()> {
    let mut builder = fs::DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(path)
}

/// The same for one that must not be there yet.
pub(super) fn make_new_folder(path: &Path) -> io::Result<()> {
    fs::create_dir(path)?;
    close_to_others(path)
}

/// Opens a file for writing that only its owner may read; makes it if it is not there.
pub(super) fn open(path: &Path, empty: bool) -> io::Result<File> {
    let mut options = OpenOptions::new();
    options.write(true).create(true).truncate(empty);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let file = options.open(path)?;
    close_to_others(path)?;
    Ok(file)
}

/// Takes from all others what they may do with a file or folder that is there.
pub(super) fn close_to_others(path: &Path) -> io::Result<()> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        let mut permissions = fs::metadata(path)?.permissions();
        let mode = permissions.mode();
        if mode & 0o077 != 0 {
            permissions.set_mode(mode & !0o077);
            fs::set_permissions(path, permissions)?;
        }
    }
    #[cfg(not(unix))]
    let _ = path;
    Ok(())
}
