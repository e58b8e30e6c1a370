//! Pictures of loose fasteners with their truth, and how well they are read.

#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "figures about pictures"
)]

mod labels;
pub mod train;
mod truth;

use anyhow::{Context, Result, ensure};
use sight::Photo;
use sight::bolt::SIZES;
use sight::count::{Counted, SOLD_MM};
use sight::kinds::Kind;
use sight::look::{Judged, Seen, Verdict, judge, look_with, sold_mm};
use sight::net::WEIGHTS;
use sight::weights::{unpacked, weights};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::time::Instant;
use truth::Truth;

/// Read pictures of fasteners whose truth is known, and print how well that went.
#[derive(clap::Args)]
pub struct Choice {
    /// The folder: a file of truth, one JSON object a line, and its pictures in the folder
    /// of the same name.
    #[arg(default_value = "checks/data/tray")]
    folder: PathBuf,
    /// The name of the file of truth, without its ending.
    #[arg(long, default_value = "open")]
    set: String,
    /// Look only at pictures whose name holds this.
    #[arg(long)]
    only: Option<String>,
    /// Look only at every second picture: 0 for those the rules were fitted to, 1 for the others.
    #[arg(long)]
    half: Option<usize>,
    /// Other weights than those that come with the program.
    #[arg(long)]
    weights: Option<PathBuf>,
    /// Say what went wrong, picture by picture.
    #[arg(long)]
    each: bool,
}

/// A share: how many of how many.
#[derive(Default, Clone, Copy)]
struct Share {
    right: usize,
    of: usize,
}

impl Share {
    fn add(&mut self, right: bool) {
        self.right += usize::from(right);
        self.of += 1;
    }
}

impl std::fmt::Display for Share {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        if self.of == 0 {
            return f.write_str("-");
        }
        let percent = 100.0 * self.right as f64 / self.of as f64;
        write!(f, "{percent:.1} % ({}/{})", self.right, self.of)
    }
}

/// The figures of one level.
#[derive(Default)]
struct Figures {
    pieces_exact: Share,
    bolts_exact: Share,
    found: Share,
    within_2_mm: Share,
    among_expected: Share,
    among_sold: Share,
    thread: Share,
    said_right: Share,
    said_wrong: Share,
    falsely_complete: Share,
    falsely_complete_changed: Share,
    cant_tell: Share,
    reason: Share,
    slowest_s: f64,
}

/// Reads all pictures and prints the table of aims.
pub fn bench(choice: &Choice) -> Result<ExitCode> {
    let all = truth::read(&choice.folder.join(format!("{}.jsonl", choice.set)))?;
    let folder = choice.folder.join(&choice.set);
    let weights = match &choice.weights {
        Some(file) => unpacked(
            &fs::read(file).with_context(|| format!("{}: cannot be read", file.display()))?,
        ),
        None => weights(),
    };
    ensure!(
        weights.len() == WEIGHTS,
        "these are weights of another form"
    );
    let mut figures: [Figures; 3] = Default::default();
    for (i, truth) in all.iter().enumerate() {
        let left_out = choice
            .only
            .as_ref()
            .is_some_and(|o| !truth.file.contains(o))
            || choice.half.is_some_and(|half| i % 2 != half);
        if left_out {
            continue;
        }
        let begun = Instant::now();
        let (seen, judged) = read_one(&folder, truth, &weights)?;
        let taken = begun.elapsed().as_secs_f64();
        let into = &mut figures[truth.level as usize];
        into.slowest_s = into.slowest_s.max(taken);
        let remarks = into.take(truth, &seen, &judged);
        if choice.each {
            println!(
                "{} {:?} {}: {} {}",
                truth.file,
                truth.level,
                truth.bad_reasons.join(","),
                judged.verdict.name(),
                judged.because.join("; ")
            );
            let doubts: Vec<String> = judged
                .groups
                .iter()
                .map(|g| format!("{} {:.2}", g.name, g.doubt))
                .collect();
            let most = judged.decided.iter().map(|d| d.doubt).fold(0.0, f64::max);
            println!(
                "    doubt: {}; most about one {most:.2}; took {taken:.2} s",
                doubts.join(", ")
            );
            for &i in judged.groups.iter().flat_map(|g| &g.unsure) {
                let (bolt, taken_for) = (&seen.bolts[i], &judged.decided[i]);
                println!(
                    "    unsure: {:.0?} {}x{} {:.2}: give or take {:.1}, {}clear, {:.2}, {:.1?}",
                    bolt.middle_mm,
                    SIZES[taken_for.size].name,
                    taken_for.length_mm,
                    taken_for.doubt,
                    bolt.error_mm,
                    if bolt.clear { "" } else { "not " },
                    bolt.bolt_chance,
                    bolt.by_size()
                );
            }
            for remark in remarks {
                println!("    {remark}");
            }
        }
    }
    print(&figures);
    let falsely: usize = figures.iter().map(|f| f.falsely_complete.right).sum();
    Ok(ExitCode::from(u8::from(falsely > 0)))
}

fn read_one(folder: &Path, truth: &Truth, weights: &[f32]) -> Result<(Seen, Judged)> {
    let file = folder.join(&truth.file);
    let bytes = fs::read(&file).with_context(|| format!("{}: cannot be read", file.display()))?;
    let photo = Photo::read(&bytes).with_context(|| file.display().to_string())?;
    let seen = look_with(&photo, weights);
    let judged = judge(&seen, &truth.groups);
    Ok((seen, judged))
}

impl Figures {
    fn take(&mut self, truth: &Truth, seen: &Seen, judged: &Judged) -> Vec<String> {
        let mut remarks = Vec::new();
        let bolts = seen.pieces.iter().filter(|p| p.kind == Kind::Bolt).count();
        self.pieces_exact.add(seen.pieces.len() == truth.pieces);
        self.bolts_exact.add(bolts == truth.bolts.len());
        if seen.pieces.len() != truth.pieces || bolts != truth.bolts.len() {
            remarks.push(format!(
                "{} pieces ({} bolts) for {} ({})",
                seen.pieces.len(),
                bolts,
                truth.pieces,
                truth.bolts.len()
            ));
        }
        take_others(truth, seen, &mut remarks);
        self.take_bolts(truth, seen, &mut remarks);
        let right = says_right(&truth.say, &judged.groups);
        let told = judged.verdict != Verdict::CantTell;
        self.said_right.add(told && right);
        self.said_wrong.add(told && !right);
        self.cant_tell.add(!told);
        let complete = truth.say.iter().all(Counted::agrees);
        self.falsely_complete
            .add(judged.verdict == Verdict::Complete && !complete);
        if judged.verdict == Verdict::Complete && !complete {
            remarks.push("FALSELY COMPLETE".to_owned());
        }
        if complete {
            self.take_changed(truth, seen, &mut remarks);
        }
        if told && !right {
            remarks.push(format!("SAID WRONG, should be {:?}", differing(&truth.say)));
        }
        if !truth.bad_reasons.is_empty() {
            let because = judged.because.join("; ");
            let named = truth.bad_reasons.iter().any(|r| names(r, &because));
            self.reason.add(named || (told && right));
        }
        remarks
    }

    /// What is complete is so no longer once one length of the list is changed for the next one
    /// that is sold.
    fn take_changed(&mut self, truth: &Truth, seen: &Seen, remarks: &mut Vec<String>) {
        for (g, group) in truth.groups.iter().enumerate() {
            for (nth, &length) in group.lengths.iter().enumerate() {
                if group.lengths[..nth].contains(&length) {
                    continue;
                }
                let above = SOLD_MM.into_iter().find(|&sold| sold > length);
                let below = SOLD_MM.into_iter().rev().find(|&sold| sold < length);
                for other in [above, below].into_iter().flatten() {
                    let mut groups = truth.groups.clone();
                    groups[g].lengths[nth] = other;
                    let judged = judge(seen, &groups);
                    let wrong = judged.verdict == Verdict::Complete;
                    self.falsely_complete_changed.add(wrong);
                    if wrong {
                        remarks.push(format!(
                            "FALSELY COMPLETE with {}: {other} for {length}",
                            group.name
                        ));
                    }
                }
            }
        }
    }

    fn take_bolts(&mut self, truth: &Truth, seen: &Seen, remarks: &mut Vec<String>) {
        let mut free: Vec<usize> = (0..seen.bolts.len()).collect();
        for bolt in &truth.bolts {
            let away = |i: usize| {
                let [x, y] = seen.bolts[i].middle_mm;
                (x - bolt.middle_mm[0]).hypot(y - bolt.middle_mm[1])
            };
            let nearest = free
                .iter()
                .copied()
                .filter(|&i| away(i) < 8.0)
                .min_by(|&a, &b| away(a).total_cmp(&away(b)));
            self.found.add(nearest.is_some());
            let Some(i) = nearest else {
                remarks.push(format!("not found: {bolt:?}"));
                continue;
            };
            free.retain(|&f| f != i);
            let piece = &seen.pieces[i];
            let length = piece.length_mm.unwrap_or_default();
            let thread = piece.thread == Some(bolt.size);
            let near = (length - bolt.length_mm).abs() <= 2.0;
            self.thread.add(thread);
            self.within_2_mm.add(near);
            let sold = (sold_mm(length) - bolt.length_mm).abs() < 0.01;
            self.among_sold.add(sold);
            if bolt.listed.contains(&bolt.length_mm) {
                let off = |l: &f64| (l - length).abs();
                let nearest = bolt
                    .listed
                    .iter()
                    .min_by(|a, b| off(a).total_cmp(&off(b)))
                    .is_some_and(|l| (l - bolt.length_mm).abs() < 0.01);
                self.among_expected.add(nearest);
            }
            if !thread || !near || !sold {
                remarks.push(format!(
                    "{} {length:.1} give or take {:.1}, {:?} for {bolt:?}",
                    piece.thread.unwrap_or("-"),
                    piece.error_mm,
                    seen.bolts[i].by_size().map(|r| (r.0 as i32, r.1 as i32)),
                ));
            }
        }
        for i in free {
            remarks.push(format!("no such bolt: {:?}", seen.bolts[i].middle_mm));
        }
    }
}

/// Which of the pieces that are no bolts were not seen, and which were seen that are none.
fn take_others(truth: &Truth, seen: &Seen, remarks: &mut Vec<String>) {
    let mut left: Vec<_> = seen.pieces[seen.bolts.len()..].iter().collect();
    for (kind, [x, y]) in &truth.others {
        let away = |i: &usize| (left[*i].x_mm - x).hypot(left[*i].y_mm - y);
        let nearest = (0..left.len()).min_by(|a, b| away(a).total_cmp(&away(b)));
        match nearest.filter(|i| away(i) < 12.0) {
            Some(i) => {
                left.swap_remove(i);
            }
            None => remarks.push(format!("not found: {kind} at {x:.0}, {y:.0}")),
        }
    }
    for piece in left {
        remarks.push(format!(
            "no such piece: {} at {:.0}, {:.0}",
            piece.kind.name(),
            piece.x_mm,
            piece.y_mm
        ));
    }
}

fn names(reason: &str, because: &str) -> bool {
    let words: &[&str] = match reason {
        "off_mat" => &["off the sheet", "over the sheet's edge"],
        "on_tag" | "tag_covered" => &["is covered"],
        "tag_out_of_frame" => &["outside the picture"],
        "glare" => &["mirrored"],
        _ => &["blurred"],
    };
    words.iter().any(|word| because.contains(word))
}

fn differing(say: &[Counted]) -> Vec<&Counted> {
    say.iter().filter(|c| !c.agrees()).collect()
}

/// Whether each group's differences are the same, in any order.
fn says_right(truth: &[Counted], said: &[Counted]) -> bool {
    let sorted = |c: &Counted| {
        let one = |l: &sight::count::Listed| format!("{} {}", l.thread, l.length_mm);
        let mut lists = [
            c.missing.iter().map(one).collect::<Vec<_>>(),
            c.extra.iter().map(one).collect(),
            c.wrong.iter().map(|w| one(&w.0)).collect(),
            c.wrong.iter().map(|w| one(&w.1)).collect(),
        ];
        lists.iter_mut().for_each(|l| l.sort());
        lists
    };
    truth.len() == said.len()
        && truth.iter().all(|t| {
            said.iter()
                .any(|s| s.name == t.name && sorted(s) == sorted(t))
        })
}

fn print(figures: &[Figures; 3]) {
    println!("| | easy | aim | hard | aim | bad |\n| --- | --- | --- | --- | --- | --- |");
    let row = |what: &str, aims: [&str; 2], of: &dyn Fn(&Figures) -> Share| {
        println!(
            "| {what} | {} | {} | {} | {} | {} |",
            of(&figures[0]),
            aims[0],
            of(&figures[1]),
            aims[1],
            of(&figures[2])
        );
    };
    row("all pieces counted exactly", ["95 %", "75 %"], &|f| {
        f.pieces_exact
    });
    row("bolts counted exactly", ["", ""], &|f| f.bolts_exact);
    row("bolts found", ["", ""], &|f| f.found);
    row("length within 2 mm", ["95 %", ""], &|f| f.within_2_mm);
    row("right among the lengths listed", ["97 %", ""], &|f| {
        f.among_expected
    });
    row("right among all lengths sold", ["90 %", ""], &|f| {
        f.among_sold
    });
    row("thread right", ["90 %", ""], &|f| f.thread);
    row("said right", ["93 %", "70 %"], &|f| f.said_right);
    row("said wrong", ["", ""], &|f| f.said_wrong);
    row("can't tell", ["", ""], &|f| f.cant_tell);
    row("\"complete\" though it is not", ["0", "0"], &|f| {
        f.falsely_complete
    });
    row(
        "\"complete\" with a length of the list changed",
        ["0", "0"],
        &|f| f.falsely_complete_changed,
    );
    row("true reason given", ["", ""], &|f| f.reason);
    println!(
        "\nSlowest picture: {:.2} s.",
        figures.iter().map(|f| f.slowest_s).fold(0.0, f64::max)
    );
}
