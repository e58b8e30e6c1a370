//! A PostgreSQL server of the tests' own, in a temporary folder on a free port.

use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::atomic::{AtomicU32, Ordering};
use std::sync::{Arc, Mutex, PoisonError, Weak};

use postgres::{Client, NoTls};

/// A running server; stopped and removed when dropped.
pub struct Server {
    programs: PathBuf,
    folder: PathBuf,
    port: u16,
}

impl Server {
    /// Starts a server, or fails with what to install.
    pub fn start() -> Self {
        let programs = programs();
        let folder = as_server_user("mktemp", &["-d", "--tmpdir", "store-postgres-XXXXXX"]);
        let folder = PathBuf::from(String::from_utf8(folder.stdout).unwrap().trim());
        // Free now; taken for good a moment later.
        let port = TcpListener::bind("127.0.0.1:0")
            .unwrap()
            .local_addr()
            .unwrap()
            .port();
        let server = Self {
            programs,
            folder,
            port,
        };
        let data = server.data();
        server.run(
            "initdb",
            &[
                "-D",
                &data,
                "-U",
                "postgres",
                "-A",
                "trust",
                "-E",
                "UTF8",
                "--no-locale",
            ],
        );
        server.run_start();
        server
    }

    /// Ends the server the way a power cut would, and starts it again.
    pub fn crash_and_restart(&self) {
        self.run("pg_ctl", &["-D", &self.data(), "-m", "immediate", "stop"]);
        self.run_start();
    }

    /// Stops the server in the middle of whatever it does, without ending it: the network goes
    /// on taking what is sent to it, and nothing comes back.
    pub fn freeze(&self) {
        self.signal("-STOP");
    }

    /// Lets it go on.
    pub fn thaw(&self) {
        self.signal("-CONT");
    }

    fn signal(&self, signal: &str) {
        let noted = std::fs::read_to_string(self.folder.join("data/postmaster.pid")).unwrap();
        let server = noted.lines().next().unwrap().to_owned();
        let mut all = vec![server.clone()];
        for entry in std::fs::read_dir("/proc").unwrap().flatten() {
            let name = entry.file_name().to_string_lossy().into_owned();
            let about = std::fs::read_to_string(entry.path().join("stat")).unwrap_or_default();
            // After the name in brackets: the state, then the parent.
            let parent = about
                .rsplit(')')
                .next()
                .and_then(|rest| rest.split(' ').nth(2));
            if parent == Some(&server) {
                all.push(name);
            }
        }
        // Whoever it started may have ended by itself meanwhile.
        let _ = Command::new("kill").arg(signal).args(&all).status();
    }

    /// Changes a setting of the server for all programs.
    pub fn set(&self, setting: &str, value: &str) {
        let mut client = Client::connect(&self.url("postgres"), NoTls).unwrap();
        client
            .batch_execute(&format!("ALTER SYSTEM SET {setting} = {value}"))
            .unwrap();
        client.execute("SELECT pg_reload_conf()", &[]).unwrap();
        let now = || -> String {
            let mut fresh = Client::connect(&self.url("postgres"), NoTls).unwrap();
            fresh
                .query_one("SELECT current_setting($1)", &[&setting])
                .unwrap()
                .get(0)
        };
        while now() != value {
            std::thread::yield_now();
        }
    }

    /// Gives the server a certificate made out to this host, and starts it again. Answers the
    /// file of the authority that signed it.
    pub fn encrypt(&self, certificate: &str, key: &str, authority: &str) -> PathBuf {
        let data = self.folder.join("data");
        let mine = tempfile::tempdir().unwrap();
        for (name, text) in [("server.crt", certificate), ("server.key", key)] {
            let from = mine.path().join(name);
            std::fs::write(&from, text).unwrap();
            let to = data.join(name);
            std::fs::copy(&from, &to).unwrap();
            // As its own user reads it: nobody else may.
            let owner = Command::new("stat")
                .args(["-c", "%u:%g"])
                .arg(&data)
                .output()
                .unwrap();
            let owner = String::from_utf8(owner.stdout).unwrap();
            let done = Command::new("chown")
                .arg(owner.trim())
                .arg(&to)
                .status()
                .unwrap();
            assert!(done.success());
            let done = Command::new("chmod").arg("600").arg(&to).status().unwrap();
            assert!(done.success());
        }
        let mut client = Client::connect(&self.url("postgres"), NoTls).unwrap();
        client.batch_execute("ALTER SYSTEM SET ssl = on").unwrap();
        drop(client);
        self.crash_and_restart();
        let root = std::env::temp_dir().join(format!("store-authority-{}.pem", self.port));
        std::fs::write(&root, authority).unwrap();
        root
    }

    /// An address of a database of the caller's own.
    pub fn new_database(&self) -> String {
        new_database(&self.url("postgres"))
    }

    fn url(&self, database: &str) -> String {
        format!("postgres://postgres@127.0.0.1:{}/{database}", self.port)
    }

    fn data(&self) -> String {
        self.folder.join("data").display().to_string()
    }

    fn run_start(&self) {
        let options = format!(
            "-c listen_addresses=127.0.0.1 -c port={} -c unix_socket_directories={}",
            self.port,
            self.folder.display()
        );
        let log = self.folder.join("server.log").display().to_string();
        self.run(
            "pg_ctl",
            &[
                "-D",
                &self.data(),
                "-w",
                "-l",
                &log,
                "-o",
                &options,
                "start",
            ],
        );
    }

    fn run(&self, program: &str, arguments: &[&str]) -> Output {
        as_server_user(
            &self.programs.join(program).display().to_string(),
            arguments,
        )
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        // Frozen, it would not hear that it is to stop.
        self.thaw();
        self.run("pg_ctl", &["-D", &self.data(), "-m", "immediate", "stop"]);
        let _ = std::fs::remove_dir_all(&self.folder);
    }
}

/// The newest installed server's programs.
fn programs() -> PathBuf {
    let versions = std::fs::read_dir("/usr/lib/postgresql")
        .into_iter()
        .flatten()
        .flatten();
    let found = versions
        .map(|version| version.path().join("bin"))
        .filter(|programs| programs.join("initdb").exists())
        .max_by_key(|programs| version_of(programs));
    found.expect("no PostgreSQL server is installed: install one with `apt-get install postgresql`")
}

fn version_of(programs: &Path) -> u32 {
    let version = programs
        .parent()
        .and_then(Path::file_name)
        .and_then(|name| name.to_str());
    version
        .and_then(|version| version.parse().ok())
        .unwrap_or(0)
}

/// The server refuses to run as the superuser.
fn as_server_user(program: &str, arguments: &[&str]) -> Output {
    let me = Command::new("id").arg("-u").output().unwrap().stdout;
    let mut command = if me == b"0\n" {
        let mut command = Command::new("runuser");
        command.args(["-u", "postgres", "--", program]);
        command
    } else {
        Command::new(program)
    };
    let output = command
        .args(arguments)
        .current_dir(std::env::temp_dir())
        .output()
        .unwrap();
    assert!(
        output.status.success(),
        "{program} {arguments:?}: {output:?}"
    );
    output
}

/// A server that all tests share while any of them runs.
pub fn shared() -> Arc<Server> {
    static SHARED: Mutex<Weak<Server>> = Mutex::new(Weak::new());
    let mut shared = SHARED.lock().unwrap_or_else(PoisonError::into_inner);
    shared.upgrade().unwrap_or_else(|| {
        let server = Arc::new(Server::start());
        *shared = Arc::downgrade(&server);
        server
    })
}

/// Makes a database beside the one at `url`.
pub fn new_database(url: &str) -> String {
    static NUMBER: AtomicU32 = AtomicU32::new(0);
    let number = NUMBER.fetch_add(1, Ordering::Relaxed);
    let name = format!("story_{}_{number}", std::process::id());
    let mut client = Client::connect(url, NoTls).unwrap();
    client
        .batch_execute(&format!("CREATE DATABASE {name}"))
        .unwrap();
    let (server, _) = url
        .rsplit_once('/')
        .expect("an address ends with a database");
    format!("{server}/{name}")
}
