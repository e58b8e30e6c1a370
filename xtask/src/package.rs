//! A Debian package and a tar of the release program: with its service file, the licences of all
//! that it contains, and a check sum. The same commit and the same program give the same bytes.

use anyhow::{Context, Result, bail, ensure};
use cargo_metadata::{CargoOpt, DependencyKind, Metadata, MetadataCommand, Package, PackageId};
use clap::Args;
use std::collections::{BTreeMap, BTreeSet, VecDeque};
use std::fmt::Write as _;
use std::fs;
use std::os::unix::fs::PermissionsExt;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode};

const SERVICE: &str = include_str!("../package.service");

/// The user that the service runs as is made when the package is put in; the record stays when
/// it is taken out.
const POSTINST: &str = "#!/bin/sh
set -e
if ! getent passwd buttonup >/dev/null; then
    useradd --system --home-dir /var/lib/buttonup --shell /usr/sbin/nologin buttonup
fi
if [ -d /run/systemd/system ]; then
    systemctl daemon-reload || true
    systemctl try-restart buttonup.service || true
fi
";

const PRERM: &str = "#!/bin/sh
set -e
if [ \"$1\" = remove ] && [ -d /run/systemd/system ]; then
    systemctl stop buttonup.service || true
fi
";

/// How to pack it.
#[derive(Args)]
pub struct Choice {
    /// The program; without it, one is built for release.
    #[arg(long, value_name = "FILE")]
    program: Option<PathBuf>,
    /// Pack twice and compare, then put an older version in, this one over it, and take it out
    /// again, in a folder of its own that holds a record.
    #[arg(long)]
    check: bool,
}

/// Packs the program.
pub fn package(choice: &Choice) -> Result<ExitCode> {
    let metadata = MetadataCommand::new()
        .features(CargoOpt::SomeFeatures(Vec::new()))
        .other_options(here()?)
        .exec()?;
    let program = match &choice.program {
        Some(program) => program.clone(),
        None => built(&metadata)?,
    };
    let out = metadata.target_directory.as_std_path().join("package");
    let contents = contents(&metadata, &program)?;
    let made = pack(&contents, &out)?;
    for file in &made.files {
        println!("{}", file.display());
    }
    if choice.check {
        let again = pack(&contents, &out.join("again"))?;
        for (one, other) in made.files.iter().zip(&again.files) {
            ensure!(
                fs::read(one)? == fs::read(other)?,
                "{} came out otherwise the second time",
                one.display()
            );
        }
        println!("the same bytes twice");
        // A version before every other, with the same program.
        let older = Contents {
            version: format!("{}~before", contents.version),
            ..contents
        };
        let older = pack(&older, &out.join("older"))?;
        tried(&older.deb, &made.deb, &out.join("tried"))?;
        println!("put in, a newer one over it with a record, taken out: the record is whole");
    }
    Ok(ExitCode::SUCCESS)
}

/// Only what is built for this machine's system.
fn here() -> Result<Vec<String>> {
    let told = said(Command::new("rustc").arg("-vV"))?;
    let mut lines = told.lines();
    let host = lines
        .find_map(|line| line.strip_prefix("host: "))
        .context("rustc does not say which system this is")?;
    Ok(["--locked", "--filter-platform", host]
        .map(str::to_owned)
        .to_vec())
}

fn built(metadata: &Metadata) -> Result<PathBuf> {
    // Where it is built is no part of the program: another folder gives the same bytes.
    let root = metadata.workspace_root.as_str();
    let mut flags = vec![format!("--remap-path-prefix={root}=/buttonup")];
    if let Some(home) = std::env::var_os("CARGO_HOME").or_else(|| {
        let home = std::env::home_dir()?;
        Some(home.join(".cargo").into_os_string())
    }) {
        flags.push(format!(
            "--remap-path-prefix={}=/cargo",
            home.to_string_lossy()
        ));
    }
    run(Command::new(env!("CARGO"))
        .env("CARGO_ENCODED_RUSTFLAGS", flags.join("\u{1f}"))
        .args(["build", "--release", "--locked", "-p", "buttonup"]))?;
    Ok(metadata
        .target_directory
        .as_std_path()
        .join("release/buttonup"))
}

/// What was packed.
struct Made {
    deb: PathBuf,
    /// The package, the tar, and their check sums.
    files: Vec<PathBuf>,
}

/// What goes into a package, whichever folder it is packed in.
struct Contents {
    version: String,
    machine: String,
    /// The time that everything in it bears: that of the commit.
    when: String,
    program: Vec<u8>,
    /// What is to be read, by name.
    documents: Vec<(&'static str, Vec<u8>)>,
}

fn contents(metadata: &Metadata, program: &Path) -> Result<Contents> {
    let root = metadata.workspace_root.as_std_path();
    let own = metadata
        .packages
        .iter()
        .find(|package| package.name.as_str() == "buttonup")
        .context("the workspace has no program called buttonup")?;
    let mut documents = Vec::new();
    for name in ["README.md", "CHANGELOG.md", "LICENSE-MIT", "LICENSE-APACHE"] {
        documents.push((name, fs::read(root.join(name))?));
    }
    documents.push(("licences.txt", licences(metadata, own)?.into_bytes()));
    Ok(Contents {
        version: own.version.to_string(),
        machine: said(Command::new("dpkg").arg("--print-architecture"))?,
        when: said(
            Command::new("git")
                .current_dir(root)
                .args(["log", "-1", "--format=%ct"]),
        )?,
        program: fs::read(program)?,
        documents,
    })
}

fn pack(contents: &Contents, out: &Path) -> Result<Made> {
    let Contents {
        version,
        machine,
        when,
        program,
        documents,
    } = contents;
    let stage = out.join("stage");
    if stage.exists() {
        fs::remove_dir_all(&stage)?;
    }
    fs::create_dir_all(out)?;
    let doc = stage.join("usr/share/doc/buttonup");
    put(&stage.join("usr/bin/buttonup"), program, 0o755)?;
    put(
        &stage.join("usr/lib/systemd/system/buttonup.service"),
        SERVICE.as_bytes(),
        0o644,
    )?;
    for (name, text) in documents {
        put(&doc.join(name), text, 0o644)?;
    }
    let name = format!("buttonup-{version}-{machine}");
    let tar = out.join(format!("{name}.tar.gz"));
    run(Command::new("tar")
        .current_dir(&stage)
        .args(["--sort=name", "--owner=0", "--group=0", "--numeric-owner"])
        .arg(format!("--mtime=@{when}"))
        .args(["--use-compress-program=gzip -n -9", "-cf"])
        .arg(&tar)
        .arg("usr"))?;
    control(&stage, version, machine)?;
    let deb = out.join(format!("buttonup_{version}_{machine}.deb"));
    run(Command::new("dpkg-deb")
        .env("SOURCE_DATE_EPOCH", when)
        .args(["--root-owner-group", "-Zxz", "--build"])
        .arg(&stage)
        .arg(&deb))?;
    let sums = out.join("SHA256SUMS");
    let told = said(
        Command::new("sha256sum")
            .current_dir(out)
            .args([&tar, &deb].map(|file| file.file_name().unwrap_or_default())),
    )?;
    fs::write(&sums, told + "\n")?;
    Ok(Made {
        files: vec![tar, deb.clone(), sums],
        deb,
    })
}

fn control(stage: &Path, version: &str, machine: &str) -> Result<()> {
    let control = format!(
        "Package: buttonup\nVersion: {version}\nArchitecture: {machine}\nSection: misc\nPriority: optional\n\
         Depends: libc6, adduser | passwd\nMaintainer: the people of buttonup <buttonup@localhost>\n\
         Description: the account of a repair shop\n \
         What is off a vehicle, what is owed before it starts, rolls and leaves, what it costs,\n \
         and who agreed to it. The record lies in one folder on this machine.\n"
    );
    put(&stage.join("DEBIAN/control"), control.as_bytes(), 0o644)?;
    put(&stage.join("DEBIAN/postinst"), POSTINST.as_bytes(), 0o755)?;
    put(&stage.join("DEBIAN/prerm"), PRERM.as_bytes(), 0o755)
}

fn put(path: &Path, bytes: &[u8], mode: u32) -> Result<()> {
    if let Some(folder) = path.parent() {
        fs::create_dir_all(folder)?;
        let mut folder = Some(folder);
        // What one's own mask makes of a folder is no part of the package.
        while let Some(one) = folder.filter(|one| !one.ends_with("stage")) {
            fs::set_permissions(one, fs::Permissions::from_mode(0o755))?;
            folder = one.parent();
        }
    }
    fs::write(path, bytes).with_context(|| path.display().to_string())?;
    fs::set_permissions(path, fs::Permissions::from_mode(mode))?;
    Ok(())
}

/// The licence of everything that is in the program, each text once.
fn licences(metadata: &Metadata, own: &Package) -> Result<String> {
    let mut texts: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    let mut list = String::from("What is in this program, and under which licence.\n\n");
    let mut bare = Vec::new();
    for package in contained(metadata, &own.id)? {
        if package.source.is_none() {
            continue;
        }
        let name = format!("{} {}", package.name, package.version);
        let licence = package.license.as_deref().unwrap_or("see its own file");
        writeln!(list, "{name}: {licence}")?;
        let folder = package
            .manifest_path
            .parent()
            .context("a package lies in a folder")?;
        let mut found = false;
        for file in fs::read_dir(folder)? {
            let file = file?;
            let upper = file.file_name().to_string_lossy().to_uppercase();
            let is_licence = ["LICENSE", "LICENCE", "COPYING", "NOTICE", "OFL"]
                .iter()
                .any(|start| upper.starts_with(start));
            if is_licence && file.file_type()?.is_file() {
                let text = fs::read_to_string(file.path()).unwrap_or_default();
                found |= !text.is_empty();
                texts
                    .entry(text.trim().to_owned())
                    .or_default()
                    .insert(name.clone());
            }
        }
        if !found {
            bare.push(name);
        }
    }
    if !bare.is_empty() {
        writeln!(
            list,
            "\nWithout a text of their own, under the licence named above: {}",
            bare.join(", ")
        )?;
    }
    for (text, of) in texts.iter().filter(|(text, _)| !text.is_empty()) {
        let of: Vec<&str> = of.iter().map(String::as_str).collect();
        writeln!(list, "\n{}\n{}\n\n{text}", "-".repeat(78), of.join(", "))?;
    }
    Ok(list)
}

/// Everything that is linked into a package, by name.
fn contained<'a>(metadata: &'a Metadata, of: &PackageId) -> Result<Vec<&'a Package>> {
    let resolve = metadata.resolve.as_ref().context("nothing is resolved")?;
    let mut seen = BTreeSet::from([of.clone()]);
    let mut todo = VecDeque::from([of.clone()]);
    while let Some(id) = todo.pop_front() {
        let node = resolve.nodes.iter().find(|node| node.id == id);
        for dep in node.into_iter().flat_map(|node| &node.deps) {
            let linked = dep
                .dep_kinds
                .iter()
                .any(|kind| kind.kind == DependencyKind::Normal);
            if linked && seen.insert(dep.pkg.clone()) {
                todo.push_back(dep.pkg.clone());
            }
        }
    }
    let mut all: Vec<&Package> = metadata
        .packages
        .iter()
        .filter(|package| seen.contains(&package.id))
        .collect();
    all.sort_by(|a, b| (&a.name, &a.version).cmp(&(&b.name, &b.version)));
    Ok(all)
}

/// Puts an older package into a root of its own, works with it, puts the newer one over it, and
/// takes it out.
fn tried(older: &Path, newer: &Path, root: &Path) -> Result<()> {
    if root.exists() {
        fs::remove_dir_all(root)?;
    }
    let data = root.join("var/lib/buttonup");
    for folder in ["var/lib/dpkg/updates", "var/lib/dpkg/info"] {
        fs::create_dir_all(root.join(folder))?;
    }
    for file in ["status", "available"] {
        fs::write(root.join("var/lib/dpkg").join(file), "")?;
    }
    let put_in = |deb: &Path| {
        let mut dpkg = Command::new("dpkg");
        dpkg.arg(format!("--root={}", root.display()))
            .args([
                "--force-depends",
                "--force-not-root",
                "--force-script-chrootless",
                "--no-triggers",
            ])
            .env("PATH", path_with_no_services())
            .arg("--unpack")
            .arg(deb);
        run(&mut dpkg)
    };
    put_in(older)?;
    let program = root.join("usr/bin/buttonup");
    run(Command::new(&program).arg("--version"))?;
    // A record of one drive's worth of commands: the demonstration, stopped as it serves.
    let mut serves = Command::new(&program)
        .args(["demo", "--no-open", "--listen", "127.0.0.1:0", "--data"])
        .arg(&data)
        .stdout(std::process::Stdio::piped())
        .spawn()?;
    let told = serves.stdout.take().context("it says nothing")?;
    let ready = std::io::BufRead::lines(std::io::BufReader::new(told))
        .map_while(Result::ok)
        .any(|line| line.contains("Stop with"));
    run(Command::new("kill").args(["-TERM", &serves.id().to_string()]))?;
    serves.wait()?;
    ensure!(ready, "it did not serve");
    let sound = || said(Command::new(&program).args(["verify", "--data"]).arg(&data));
    let before = sound()?;
    put_in(newer)?;
    ensure!(
        sound()? == before,
        "the record reads otherwise after a newer package was put in"
    );
    let bytes = fs::read(data.join("store.db"))?;
    run(Command::new("dpkg")
        .arg(format!("--root={}", root.display()))
        .args([
            "--force-depends",
            "--force-not-root",
            "--force-script-chrootless",
            "--remove",
            "buttonup",
        ]))?;
    ensure!(!program.exists(), "the program is still there");
    ensure!(
        fs::read(data.join("store.db"))? == bytes,
        "taking the program out touched the record"
    );
    Ok(())
}

/// The usual places, and nothing of one's own.
fn path_with_no_services() -> String {
    "/usr/sbin:/usr/bin:/sbin:/bin".to_owned()
}

fn run(command: &mut Command) -> Result<()> {
    let status = command.status().with_context(|| format!("{command:?}"))?;
    if !status.success() {
        bail!("{command:?} ended with {status}");
    }
    Ok(())
}

fn said(command: &mut Command) -> Result<String> {
    let out = command.output().with_context(|| format!("{command:?}"))?;
    ensure!(
        out.status.success(),
        "{command:?} ended with {}: {}",
        out.status,
        String::from_utf8_lossy(&out.stderr)
    );
    Ok(String::from_utf8_lossy(&out.stdout).trim().to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn all_that_is_in_the_program_has_its_licence_named() {
        let metadata = MetadataCommand::new()
            .other_options(here().unwrap())
            .exec()
            .unwrap();
        let own = metadata
            .packages
            .iter()
            .find(|one| one.name.as_str() == "buttonup")
            .unwrap();
        let text = licences(&metadata, own).unwrap();
        for name in ["rusqlite ", "axum ", "krilla "] {
            assert!(text.lines().any(|line| line.starts_with(name)), "{name}");
        }
        // What serves the tests alone is not in it.
        assert!(!text.contains("\nproptest "), "{text}");
    }

    /// A program of a few bytes, and something to read.
    fn small() -> Contents {
        Contents {
            version: "1.2.3".to_owned(),
            machine: "amd64".to_owned(),
            when: "1700000000".to_owned(),
            program: b"#!/bin/sh\necho buttonup\n".to_vec(),
            documents: vec![
                ("LICENSE-MIT", b"a licence".to_vec()),
                ("licences.txt", b"what is in it".to_vec()),
            ],
        }
    }

    fn is_there(program: &str) -> bool {
        Command::new(program).arg("--version").output().is_ok()
    }

    /// Where there is no dpkg, no package can be made; what there is is asked of it.
    #[test]
    fn the_same_contents_give_the_same_bytes_in_another_folder_and_at_another_time() {
        if !is_there("dpkg-deb") {
            return;
        }
        let (one, other) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
        let first = pack(&small(), one.path()).unwrap();
        // Whoever packs next has it lie a second later, in a folder with other things in it.
        fs::create_dir_all(other.path().join("deep/stage/usr/left/over")).unwrap();
        let second = pack(&small(), &other.path().join("deep")).unwrap();
        for (first, second) in first.files.iter().zip(&second.files) {
            assert_eq!(first.file_name(), second.file_name());
            assert!(
                fs::read(first).unwrap() == fs::read(second).unwrap(),
                "{first:?}"
            );
        }
        let sums = Command::new("sha256sum")
            .current_dir(one.path())
            .args(["--check", "--strict", "SHA256SUMS"])
            .output()
            .unwrap();
        assert!(sums.status.success(), "{sums:?}");
        let listed = said(Command::new("dpkg-deb").arg("--contents").arg(&first.deb)).unwrap();
        for (mode, file) in [
            ("-rwxr-xr-x root/root", "./usr/bin/buttonup"),
            (
                "-rw-r--r-- root/root",
                "./usr/lib/systemd/system/buttonup.service",
            ),
            (
                "-rw-r--r-- root/root",
                "./usr/share/doc/buttonup/LICENSE-MIT",
            ),
            (
                "-rw-r--r-- root/root",
                "./usr/share/doc/buttonup/licences.txt",
            ),
        ] {
            let line = listed.lines().find(|line| line.ends_with(file));
            assert!(
                line.is_some_and(|line| line.starts_with(mode)),
                "{file}: {listed}"
            );
        }
        assert!(!listed.contains("left/over"), "{listed}");
        let version = said(
            Command::new("dpkg-deb")
                .arg("--field")
                .arg(&first.deb)
                .arg("Version"),
        );
        assert_eq!(version.unwrap(), "1.2.3");
        // Another program is another package.
        let changed = Contents {
            program: b"another".to_vec(),
            ..small()
        };
        let changed = pack(&changed, &one.path().join("changed")).unwrap();
        assert!(fs::read(&changed.deb).unwrap() != fs::read(&first.deb).unwrap());
    }
}
