//! What holds for the whole project, and no single crate can check of itself: which room
//! may use which, what a pure room must never touch, which licences come in, and which
//! words have no place in any file; and whether what the documents name is there.

mod documents;
mod licences;
mod rooms;
mod source;
mod table;
mod words;

use cargo_metadata::{DependencyKind, Metadata, MetadataCommand, Node, PackageId};
use std::collections::BTreeSet;
use std::path::PathBuf;

/// The folder of the whole workspace, asked for when the test runs: two copies of the
/// project may share what was built, and each checks itself.
fn project() -> PathBuf {
    let crate_folder = std::env::var_os("CARGO_MANIFEST_DIR").expect("cargo says it to every test");
    PathBuf::from(crate_folder).join("../..")
}

fn read(name: &str) -> String {
    let path = project().join(name);
    std::fs::read_to_string(&path)
        .unwrap_or_else(|error| panic!("cannot read {}: {error}", path.display()))
}

fn metadata() -> Metadata {
    MetadataCommand::new()
        .manifest_path(project().join("Cargo.toml"))
        .exec()
        .expect("cargo describes the workspace")
}

/// What a crate is built with; what only its tests are built with is left out.
fn built_with(node: &Node) -> impl Iterator<Item = &PackageId> {
    node.deps
        .iter()
        .filter(|dependency| {
            dependency
                .dep_kinds
                .iter()
                .any(|kind| kind.kind != DependencyKind::Development)
        })
        .map(|dependency| &dependency.pkg)
}

/// These packages, and everything that they are built with.
fn reached_from<'a>(
    metadata: &'a Metadata,
    start: impl IntoIterator<Item = &'a PackageId>,
) -> BTreeSet<&'a PackageId> {
    let resolved = metadata
        .resolve
        .as_ref()
        .expect("dependencies were asked for");
    let mut waiting: Vec<&PackageId> = start.into_iter().collect();
    let mut reached = BTreeSet::new();
    while let Some(package) = waiting.pop() {
        if reached.insert(package) {
            let node = resolved
                .nodes
                .iter()
                .find(|node| node.id == *package)
                .expect("every package is resolved");
            waiting.extend(built_with(node));
        }
    }
    reached
}
