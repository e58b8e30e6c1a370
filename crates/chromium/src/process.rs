//! A program that runs beside a test, says where it listens, and ends with the test.

use anyhow::{Context, Result, bail};
use std::io::{BufRead, BufReader, Read};
use std::process::{Child, Command, Stdio};
use std::sync::mpsc::{self, RecvTimeoutError, Sender};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread;
use std::time::{Duration, Instant};

/// How long a program may take to say where it listens.
const START_LIMIT: Duration = Duration::from_secs(60);

/// The program under test: started, listening, ended on drop.
pub struct Server {
    process: Process,
    address: String,
}

impl Server {
    /// Runs the command and waits until it prints a line with its `http://` address.
    ///
    /// # Errors
    /// If the program cannot be started, or ends or falls silent before it has printed
    /// an address; the message then holds everything that it did print.
    pub fn start(command: &mut Command) -> Result<Server> {
        let (process, address) = Process::start(command, address_in)?;
        Ok(Server { process, address })
    }

    /// The address as printed, without a slash at its end: `http://127.0.0.1:4711`.
    pub fn address(&self) -> &str {
        &self.address
    }

    /// The address of one page; `path` starts with a slash.
    pub fn url(&self, path: &str) -> String {
        format!("{}{path}", self.address)
    }

    /// All that the program has printed so far, for the message of a failing test.
    pub fn printed(&self) -> String {
        self.process.printed()
    }
}

fn address_in(line: &str) -> Option<String> {
    let rest = &line[line.find("http://")?..];
    let address = rest.split_whitespace().next()?;
    Some(address.trim_end_matches(['/', '.', ',', ';']).to_owned())
}

/// A running program whose output is read to the end, so that it never blocks on a full
/// pipe. It is killed, and waited for, when dropped.
pub(crate) struct Process {
    child: Child,
    printed: Arc<Mutex<String>>,
}

impl Process {
    /// Runs the command until `find` takes something from a line of its standard output.
    pub(crate) fn start<T>(
        command: &mut Command,
        find: impl Fn(&str) -> Option<T>,
    ) -> Result<(Process, T)> {
        let mut child = command
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .with_context(|| format!("cannot run {}", command.get_program().display()))?;
        let printed = Arc::new(Mutex::new(String::new()));
        let (lines, heard) = mpsc::channel();
        let stdout = child.stdout.take().expect("standard output is piped above");
        let stderr = child.stderr.take().expect("standard error is piped above");
        listen(stdout, Arc::clone(&printed), Some(lines));
        listen(stderr, Arc::clone(&printed), None);
        let process = Process { child, printed };

        let program = command.get_program().display();
        let deadline = Instant::now() + START_LIMIT;
        loop {
            let left = deadline.saturating_duration_since(Instant::now());
            match heard.recv_timeout(left) {
                Ok(line) => {
                    if let Some(found) = find(&line) {
                        return Ok((process, found));
                    }
                }
                Err(RecvTimeoutError::Disconnected) => bail!(
                    "{program} ended before it said where it listens; it printed:\n{}",
                    process.printed()
                ),
                Err(RecvTimeoutError::Timeout) => bail!(
                    "{program} did not say where it listens within {} s; it printed:\n{}",
                    START_LIMIT.as_secs(),
                    process.printed()
                ),
            }
        }
    }

    pub(crate) fn printed(&self) -> String {
        self.printed
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }
}

impl Drop for Process {
    fn drop(&mut self) {
        // An error here means that it has ended already, which is what is wanted.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

fn listen(
    from: impl Read + Send + 'static,
    printed: Arc<Mutex<String>>,
    lines: Option<Sender<String>>,
) {
    thread::spawn(move || {
        for line in BufReader::new(from).lines().map_while(Result::ok) {
            let mut printed = printed.lock().unwrap_or_else(PoisonError::into_inner);
            printed.push_str(&line);
            printed.push('\n');
            drop(printed);
            if let Some(lines) = &lines {
                // Nobody listens once the address is known; reading goes on all the same.
                let _ = lines.send(line);
            }
        }
    });
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::path::Path;

    fn shell(script: &str) -> Command {
        let mut command = Command::new("sh");
        command.args(["-c", script]);
        command
    }

    #[test]
    fn the_address_is_read_from_a_sentence() {
        let line = "The shop is open at http://127.0.0.1:4711/. Press Ctrl-C to close.";
        assert_eq!(address_in(line).as_deref(), Some("http://127.0.0.1:4711"));
        assert_eq!(address_in("starting"), None);
    }

    #[test]
    fn a_server_is_known_by_its_address_and_ends_when_dropped() {
        let server = Server::start(&mut shell(
            "echo starting; echo open at http://127.0.0.1:4711; exec sleep 600",
        ))
        .unwrap();
        assert_eq!(server.url("/floor"), "http://127.0.0.1:4711/floor");
        assert!(server.printed().starts_with("starting\n"));

        let entry = format!("/proc/{}", server.process.child.id());
        let had_entry = Path::new(&entry).exists();
        drop(server);
        // Where there is no /proc, there is nothing to compare.
        assert!(!had_entry || !Path::new(&entry).exists(), "still running");
    }

    #[test]
    fn a_program_that_ends_early_is_quoted() {
        let error = Server::start(&mut shell("echo the port is taken; exit 1"))
            .err()
            .expect("it never gave an address")
            .to_string();
        assert!(
            error.contains("ended before it said where it listens"),
            "{error}"
        );
        assert!(error.contains("the port is taken"), "{error}");
    }

    #[test]
    fn a_missing_program_is_named() {
        let error = Server::start(&mut Command::new("no-such-program-here"))
            .err()
            .expect("there is no such program")
            .to_string();
        assert!(error.contains("no-such-program-here"), "{error}");
    }
}
