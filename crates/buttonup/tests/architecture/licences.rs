//! May everything that comes in be passed on freely?

use crate::{metadata, reached_from};
use cargo_metadata::{Metadata, Package};
use spdx::{Expression, ParseMode};

/// Licences that ask for no more than their notice.
const PERMISSIVE: [&str; 12] = [
    "0BSD",
    "Apache-2.0",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "CC0-1.0",
    "ISC",
    "MIT",
    "MIT-0",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// What drives the browser in tests may also be under this; none of it reaches people.
const IN_TOOLS_ONLY: &str = "MPL-2.0";

#[test]
fn every_licence_is_permissive() {
    let metadata = metadata();
    let offending: Vec<String> = offending(&metadata);
    assert!(offending.is_empty(), "\n{}\n", offending.join("\n"));
}

fn offending(metadata: &Metadata) -> Vec<String> {
    let program = metadata
        .workspace_packages()
        .into_iter()
        .find(|package| package.name == "buttonup")
        .expect("the program is in the workspace");
    let passed_on = reached_from(metadata, [&program.id]);
    metadata
        .packages
        .iter()
        .filter(|package| {
            let extra = (!passed_on.contains(&package.id)).then_some(IN_TOOLS_ONLY);
            !is_allowed(licence(package), extra)
        })
        .map(|package| format!("{} {}: {}", package.name, package.version, licence(package)))
        .collect()
}

fn licence(package: &Package) -> &str {
    package.license.as_deref().unwrap_or("no licence stated")
}

/// Whether an expression such as `MIT OR Apache-2.0` leaves a choice that is allowed.
fn is_allowed(expression: &str, extra: Option<&str>) -> bool {
    Expression::parse_mode(expression, ParseMode::LAX).is_ok_and(|expression| {
        expression.evaluate(|needed| {
            // An exception, as in `Apache-2.0 WITH LLVM-exception`, only takes demands away.
            needed
                .license
                .id()
                .is_some_and(|id| PERMISSIVE.contains(&id.name) || extra == Some(id.name))
        })
    })
}

#[test]
fn one_allowed_choice_is_enough_but_every_demand_must_be_met() {
    for allowed in [
        "MIT",
        "MIT/Apache-2.0",
        "MIT OR Apache-2.0 OR LGPL-2.1-or-later",
        "Apache-2.0 WITH LLVM-exception",
        "(MIT OR GPL-3.0-only) AND Unicode-3.0",
    ] {
        assert!(is_allowed(allowed, None), "{allowed}");
    }
    for refused in [
        "GPL-3.0-only",
        "MIT AND GPL-3.0-only",
        "MPL-2.0",
        "no licence stated",
        "",
    ] {
        assert!(!is_allowed(refused, None), "{refused}");
    }
    assert!(is_allowed("MPL-2.0", Some(IN_TOOLS_ONLY)));
}

/// The exception is for tools: the day the program needs none, or the day it slips into
/// the program, this tells.
#[test]
fn only_a_tool_uses_the_exception() {
    let metadata = metadata();
    let beyond: Vec<&str> = metadata
        .packages
        .iter()
        .filter(|package| !is_allowed(licence(package), None))
        .map(|package| package.name.as_str())
        .collect();
    assert_eq!(beyond, ["webdriver"]);
}
