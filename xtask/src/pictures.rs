//! Pictures of the pages, as people see them, and those that the documents show.

mod documents;

use anyhow::{Context, Result, bail, ensure};
use cargo_metadata::MetadataCommand;
use chromium::{Browser, DESK, PHONE, Server, Viewport};
use clap::Args;
use clap::builder::PossibleValuesParser;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode};

/// The pages of the demonstration shop that are worth a picture: name and path.
const PAGES: &[(&str, &str)] = &[
    ("floor", "/"),
    ("calls", "/calls"),
    ("find", "/find"),
    ("take-in", "/new?vin=1M8GDM9A0KP042788"),
    ("order", "/o/1002"),
    ("left", "/o/1001"),
    ("promise", "/o/1002/promise"),
    ("walk-round", "/o/1002/walk"),
    ("off", "/o/1002/off"),
    (
        "stage",
        "/o/1002/off?lines=7+housing+bolts+M8%0Aoil-cooler+housing%0Arag+in+the+oil+port%0Alower+hose",
    ),
    ("back", "/o/1002/back"),
    ("tighten", "/o/1004/back"),
    ("stopped", "/o/1004"),
    ("still-open", "/o/1002/open"),
    ("tray", "/o/1002/tray"),
    ("may-it", "/o/1002/may"),
    ("gate", "/o/1002/may/hand-over"),
    ("owed", "/o/1002/due"),
    ("snag", "/o/1002/snag?item=housing-bolts"),
    ("maps", "/maps"),
    ("map", "/maps/korvane-drayman-engine-front"),
    ("map-new", "/maps/new"),
    (
        "map-begun",
        "/maps/start?vehicle=Lanner+estate%2C+front+door",
    ),
    ("map-edit", "/maps/korvane-drayman-engine-front/edit"),
    (
        "map-edit-item",
        "/maps/korvane-drayman-engine-front/edit?item=pulley+bolts",
    ),
    (
        "map-edit-bolts",
        "/maps/korvane-drayman-engine-front/edit?item=bracket+bolts",
    ),
    ("way", "/o/1002/way"),
    ("plan", PLAN),
    ("plan-now", "/o/1002/plan"),
    (
        "plan-targets",
        "/o/1006/plan?map=korvane-drayman-engine-front&aim=reach&find=gasket",
    ),
    (
        "plan-price",
        "/o/1002/plan/price?map=korvane-drayman-engine-front&for=housing+gasket&aim=reach",
    ),
    ("next-stage", "/o/1002/stage"),
    ("snag-which", "/o/1002/stage?snag=which"),
    ("desk", "/o/1002/desk"),
    ("ask", "/o/1002/ask"),
    ("parts", "/o/1002/parts"),
    ("money", "/o/1002/pay"),
    ("price", "/o/1002/price"),
    ("decline", "/o/1002/decline"),
    ("hand-over", "/o/1002/hand-over"),
    ("shop", "/shop"),
    ("second", "/o/1002/second"),
    (
        "put-ins",
        "/o/1002/off?lines=lower+hose%2C+cooling+coolant%0Aheater+hose",
    ),
    ("item", "/o/1002/item/housing-bolts"),
    ("warranty-invoice", "/o/1001/invoice?payer=warranty"),
    ("story", "/o/1002/story"),
    ("record", "/record"),
    ("coolant", "/coolant"),
    ("coolant-of-order", "/o/1002/item/coolant"),
    (
        "coolant-measure",
        "/o/1002/item/coolant/measure?instrument=refractometer&reading=-24&glycol=ethylene",
    ),
    ("coolant-reading", "/o/1002/item/coolant/measure"),
    ("coolant-drain", "/o/1002/item/coolant/drain"),
    (
        "coolant-pour",
        "/o/1002/item/coolant/pour?capacity=9.2+L&now=35+%25&want=50+%25",
    ),
    ("coolant-bleed", "/o/1002/item/coolant/bleed"),
    ("coolant-level", "/o/1002/item/coolant/level"),
    ("coolant-test", "/o/1002/item/coolant/leak"),
    ("coolant-figures", "/o/1002/item/coolant/figures"),
    (
        "coolant-protection",
        "/coolant/protection?strength=50+%25&of=concentrate&glycol=ethylene&cap=1.1+bar&altitude=650+m&hottest=108",
    ),
    (
        "coolant-strength",
        "/coolant/strength?instrument=refractometer&reading=-24&glycol=ethylene&cap=1.1",
    ),
    (
        "coolant-mix",
        "/coolant/mix?capacity=9.2+L&left=3.7&now=35&want=50&of=concentrate&has-concentrate=yes&has-water=yes",
    ),
    (
        "coolant-balance",
        "/coolant/balance?drained=5.5+L&poured=4+L&capacity=9.2+L&bottle-area=150",
    ),
    (
        "coolant-leak",
        "/coolant/leak?readings=0+1.10+22%0A5+1.09+22%0A10+1.09+21.5%0A15+1.085+21.5&unit=bar&limit=0.05+bar&limit-time=15+min&cap=1.1",
    ),
    ("estimate", "/o/1002/estimate"),
    ("added", "/o/1002/added"),
    ("invoice", "/o/1001/invoice"),
    ("threads", "/threads"),
    (
        "thread",
        "/threads/thread?thread=M8x1.25&class=8.8&in=aluminium&depth=12",
    ),
    (
        "torque",
        "/threads/torque?thread=M10x1.5&clamp=25275&friction=0.15",
    ),
    ("pattern", "/threads/pattern?layout=circle&bolts=8"),
    (
        "thread-repair",
        "/threads/repair?thread=M8x75&class=8.8&engaged=18&hole=blind&depth=26&boss=19&in=aluminium&torque=22",
    ),
    (
        "stub",
        "/threads/stub?stands=below&thread=M8&class=8.8&by=2&engaged=18&hole=blind&depth=26&in=aluminium",
    ),
    ("calc", "/calc"),
    ("calc-belt", "/calc/belt"),
    (
        "belt",
        "/calc/belt/drive?turns=cw&name-1=crank&x-1=0&y-1=0&across-1=160&name-2=tensioner&x-2=-120&y-2=116&across-2=72&side-2=back&name-3=alternator&x-3=-126&y-3=262&across-3=62&name-4=pump&x-4=172&y-4=196&across-4=132&profile=given&tensioner=arm&tensioned=tensioner&pivot-x=-120&pivot-y=46&least=72&most=110",
    ),
    (
        "belt-wrong",
        "/calc/belt/drive?turns=cw&name-1=crank&x-1=0&y-1=0&across-1=160&name-2=tensioner&x-2=-120&y-2=116&across-2=72&side-2=back&name-3=alternator&x-3=-126&y-3=262&across-3=62&name-4=pump&x-4=172&y-4=196&across-4=132&profile=given&tensioner=arm&tensioned=tensioner&pivot-x=-120&pivot-y=46&least=72&most=110&belt=6PK1500",
    ),
    ("belt-blank", "/calc/belt/drive"),
    ("belt-code", "/calc/belt/code?code=6PK1285"),
    (
        "belt-align",
        "/calc/belt/align?near=0&far=1&apart=120&limit=0.33",
    ),
    ("belt-wear", "/calc/belt/wear?pin=yes"),
    ("fluids", "/calc/fluids"),
    ("brake", "/calc/fluids/brake?class=DOT+4&boils=140&bled=yes"),
    (
        "axle",
        "/calc/fluids/axle?level=at-mark&at=30&window-low=20&window-high=40&out=2.1+L&in=2.0+L",
    ),
    (
        "washer",
        "/calc/fluids/washer?holds=4&left=1&now=20&want=50",
    ),
    ("battery", "/calc/fluids/battery"),
    ("roadtest", "/calc/roadtest"),
    ("recording", "/calc/roadtest/recording"),
    (
        "by-hand",
        "/calc/roadtest/by-hand?at-1=0&coolant-1=20&at-2=10&coolant-2=90&voltage-2=14.2&at-3=15&coolant-3=91&voltage-3=14.1&limit=110",
    ),
    (
        "by-hand-wrong",
        "/calc/roadtest/by-hand?at-1=5&coolant-1=hot&at-2=1",
    ),
];

/// Pages of what is made first, since its name is another in each demonstration.
const MADE: &[(&str, &str)] = &[
    (
        "vehicle",
        "return document.querySelector('a[href^=\"/v/\"]').href",
    ),
    ("snag-asks", "return '/o/1002/snag/picture'"),
    (
        "snag-ways",
        "return '/o/1002/snag/picture?asked=1&thread=M8x1.25&class=8.8&bolt-length=75%20mm&torque=22%20Nm&by=2&engaged=18&depth=26&hole=blind&boss=19&in=aluminium'",
    ),
];

/// A bolt snaps on the order of the benchmark repair.
const SNAP: &str = r#"
    const done = arguments[arguments.length - 1];
    const snap = async () => {
    const { order } = await (await fetch("/api/orders/1002")).json();
    const answer = await fetch("/api/commands", {
        method: "POST",
        headers: { "content-type": "application/json" },
        body: JSON.stringify({
            command_id: crypto.randomUUID(), device: "pictures", device_seq: 1,
            happened_at: new Date().toISOString(), who: document.body.dataset.who,
            stream: `order:${order}`,
            fact: { "snag-found": {
                snag: "picture", item: "housing-bolts", at: [6], what: "snapped", sits: "below",
                words: null, photos: [], moves: [],
            } },
        }),
    });
    return answer.ok;
    };
    snap().then(done, () => done(false));
"#;

/// The screens of whoever is at the browser speak a language from now on.
const SPEAK: &str = r#"
    const [language, done] = arguments;
    const { who } = document.body.dataset;
    const shop_fact = { "person-speaks": { person: who, language, after: JSON.parse(sessionStorage.spoken ?? "[]") } };
    const command_id = crypto.randomUUID();
    sessionStorage.spoken = JSON.stringify([command_id]);
    fetch("/api/commands", {
        method: "POST",
        headers: { "content-type": "application/json" },
        body: JSON.stringify({
            command_id, device: "pictures", device_seq: Date.now(),
            happened_at: new Date().toISOString(), who, stream: "shop", shop_fact,
        }),
    }).then((answer) => done(answer.ok), () => done(false));
"#;

/// A plan from a whole vehicle, with one way ruled out.
const PLAN: &str = "/o/1006/plan?map=korvane-drayman-engine-front&aim=reach&for=housing+gasket&for=housing+o-rings&without=shroud.off";

/// The page that makes the browser one of the demonstration's people.
const BE_SOMEBODY: &str = "/who/pavel";

/// A large screen on the desk.
const WIDE: Viewport = Viewport {
    width_px: 1920,
    height_px: 1080,
    mobile: false,
};

const DEVICES: [(&str, Viewport); 3] = [("phone", PHONE), ("desk", DESK), ("wide", WIDE)];

const LANGUAGES: [&str; 2] = ["en", "de"];

const COLOURS: [(&str, bool); 2] = [("light", false), ("dark", true)];

/// Which pictures to take.
#[derive(Args)]
pub struct Choice {
    /// Take this page alone.
    #[arg(long, value_name = "NAME", value_parser = PossibleValuesParser::new(PAGES.iter().chain(MADE).map(|(name, _)| *name)))]
    page: Option<String>,
    /// Take the pages in this language alone.
    #[arg(long, value_name = "TAG", value_parser = PossibleValuesParser::new(LANGUAGES))]
    language: Option<String>,
    /// Take only the pictures of README and docs, and put them where those show them.
    #[arg(long, conflicts_with_all = ["page", "language", "full", "out"])]
    documents: bool,
    /// Take the page to its end, not only what the screen shows.
    #[arg(long)]
    full: bool,
    /// Use this program instead of building it.
    #[arg(long, value_name = "FILE")]
    program: Option<PathBuf>,
    /// The folder for the pictures.
    #[arg(long, value_name = "DIR", default_value = "pictures")]
    out: PathBuf,
}

/// Builds the program, opens the demonstration shop and takes the pictures.
///
/// # Errors
/// If the program cannot be built or started, or a page does not load.
pub fn take(choice: &Choice) -> Result<ExitCode> {
    let program = match &choice.program {
        Some(program) => program.clone(),
        None => build()?,
    };
    let data = tempfile::tempdir().context("cannot make a folder for the demonstration")?;
    let server = Server::start(
        Command::new(program)
            .args(["demo", "--listen", "127.0.0.1:0", "--no-open", "--data"])
            .arg(data.path()),
    )?;
    let browser = Browser::start()?;
    browser.goto(&server.url(BE_SOMEBODY))?;
    if choice.documents {
        documents::take(&server, &browser)?;
        return Ok(ExitCode::SUCCESS);
    }
    if MADE.iter().any(|(page, _)| choice.wants(page)) {
        let snapped = browser.execute_until_called_back(SNAP, vec![])?;
        ensure!(snapped.as_bool() == Some(true), "the bolt did not snap");
    }
    for language in LANGUAGES {
        if choice
            .language
            .as_deref()
            .is_none_or(|only| only == language)
        {
            browser.goto(&server.url(BE_SOMEBODY))?;
            let spoken = browser.execute_until_called_back(SPEAK, vec![language.into()])?;
            ensure!(
                spoken.as_bool() == Some(true),
                "no page is made in {language}"
            );
            every_page(&server, &browser, language, choice)?;
        }
    }
    Ok(ExitCode::SUCCESS)
}

impl Choice {
    fn wants(&self, page: &str) -> bool {
        self.page.as_ref().is_none_or(|only| only == page)
    }
}

fn every_page(server: &Server, browser: &Browser, language: &str, choice: &Choice) -> Result<()> {
    for &(page, path) in PAGES.iter().filter(|(page, _)| choice.wants(page)) {
        picture_page(browser, &server.url(path), page, language, choice)?;
    }
    for &(page, where_it_is) in MADE.iter().filter(|(page, _)| choice.wants(page)) {
        browser.goto(&server.url("/o/1001"))?;
        let found = browser.execute(where_it_is, vec![])?;
        let path = found.as_str().context("the page has no address")?;
        let path = path.strip_prefix(&server.url("")).unwrap_or(path);
        picture_page(browser, &server.url(path), page, language, choice)?;
    }
    Ok(())
}

fn picture_page(
    browser: &Browser,
    url: &str,
    page: &str,
    language: &str,
    choice: &Choice,
) -> Result<()> {
    for (device, viewport) in DEVICES {
        browser.set_viewport(viewport)?;
        browser.goto(url)?;
        if choice.full {
            browser.set_viewport(to_the_end(browser, viewport)?)?;
        }
        for (colours, dark) in COLOURS {
            browser.set_dark(dark)?;
            let name = format!("{page}-{device}-{colours}.png");
            let path = choice.out.join(language).join(name);
            browser.screenshot(&path)?;
            println!("{}", path.display());
        }
    }
    Ok(())
}

fn to_the_end(browser: &Browser, viewport: Viewport) -> Result<Viewport> {
    let height_px = browser
        .execute("return document.documentElement.scrollHeight", vec![])?
        .as_u64()
        .and_then(|height_px| u32::try_from(height_px).ok())
        .context("the page has no height")?;
    Ok(Viewport {
        height_px: height_px.max(viewport.height_px),
        ..viewport
    })
}

fn build() -> Result<PathBuf> {
    let built = Command::new("cargo")
        .args(["build", "--release", "--package", "buttonup"])
        .status()
        .context("cannot run cargo")?;
    if !built.success() {
        bail!("the program does not build");
    }
    let metadata = MetadataCommand::new()
        .no_deps()
        .exec()
        .context("cannot read the workspace")?;
    let program = Path::new(&metadata.target_directory)
        .join("release/buttonup")
        .with_extension(std::env::consts::EXE_EXTENSION);
    Ok(program)
}
