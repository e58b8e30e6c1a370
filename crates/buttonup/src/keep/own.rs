//! New files and folders beside a record or a copy: only their owner may read them, and a name
//! that somebody else took is left to them.

use std::ffi::OsString;
use std::fs::{self, File, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// A new file that only its owner may read.
pub fn new_file(path: &Path) -> io::Result<File> {
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    options.open(path)
}

/// Writes a new file whole, and synced.
pub fn write_new(path: &Path, text: &str) -> io::Result<()> {
    let mut file = new_file(path)?;
    file.write_all(text.as_bytes())?;
    file.sync_all()
}

/// A name beside another that nobody has: what stands under it is this program's alone.
pub fn beside(path: &Path, what: &str) -> PathBuf {
    let mut name: OsString = path.as_os_str().to_owned();
    name.push(format!(".{what}-{}", shop::Device::name()));
    PathBuf::from(name)
}

/// Gives a finished folder or file its name, unless it is taken.
pub fn finish(unfinished: &Path, to: &Path) -> io::Result<()> {
    if fs::symlink_metadata(to).is_ok() {
        // An empty folder that was made for it goes; nothing else does.
        fs::remove_dir(to).map_err(|_| io::Error::from(io::ErrorKind::AlreadyExists))?;
    }
    fs::rename(unfinished, to)?;
    sync_folder_of(to)
}

/// A new name is safe only when its folder is synced.
pub fn sync_folder_of(path: &Path) -> io::Result<()> {
    let parent = path.parent().filter(|parent| *parent != Path::new(""));
    if cfg!(unix) {
        File::open(parent.unwrap_or(Path::new(".")))?.sync_all()?;
    }
    Ok(())
}
