//! A whole working in its three forms.

use measure::{Grade, Line, Source, Working};

fn clamp() -> Working {
    let standard = Source::new("ISO 898-1", "table of proof loads", Grade::Published);
    Working::new("Clamp force & torque")
        .line(
            Line::new("proof load", standard)
                .symbol("Fp")
                .value("33 700 N"),
        )
        .line(
            Line::new("clamp force", Source::derived())
                .formula("F", "0.75·Fp")
                .input("Fp", "33 700 N")
                .value("25 275 N")
                .note("when < 0.9·Fp"),
        )
        .line(Line::new("friction", Source::given()).symbol("µ"))
        .remark("Dry threads.")
        .limit("Not for bolts tightened by angle.")
}

#[test]
fn as_text() {
    let expected = "\
Clamp force & torque
  1. proof load: Fp = 33 700 N
     source: ISO 898-1, table of proof loads (published)
  2. clamp force: F = 0.75·Fp = 25 275 N
     with Fp = 33 700 N
     source: from the lines above
     note: when < 0.9·Fp
  3. friction: µ = unknown
     source: given
  remark: Dry threads.
  limit: Not for bolts tightened by angle.
";
    assert_eq!(clamp().text(), expected);
}

#[test]
fn as_html() {
    let expected = "<section><h3>Clamp force &amp; torque</h3><ol>\
<li><p>proof load: <output>Fp = 33 700 N</output></p><dl>\
<dt>Source</dt><dd>ISO 898-1, table of proof loads (published)</dd></dl></li>\
<li><p>clamp force: <output>F = 0.75·Fp = 25 275 N</output></p><dl>\
<dt>Fp</dt><dd>33 700 N</dd>\
<dt>Source</dt><dd>from the lines above</dd>\
<dt>Note</dt><dd>when &lt; 0.9·Fp</dd></dl></li>\
<li><p>friction: <output>µ = unknown</output></p><dl>\
<dt>Source</dt><dd>given</dd></dl></li></ol>\
<h4>Remarks</h4><ul><li>Dry threads.</li></ul>\
<h4>Limits</h4><ul><li>Not for bolts tightened by angle.</li></ul></section>";
    assert_eq!(clamp().html(), expected);
}

#[test]
fn as_json() {
    let expected = serde_json::json!({
        "title": "Clamp force & torque",
        "lines": [
            {
                "what": "proof load", "symbol": "Fp", "formula": null, "inputs": [],
                "value": "33 700 N", "note": null,
                "source": {"title": "ISO 898-1", "detail": "table of proof loads", "grade": "published"},
            },
            {
                "what": "clamp force", "symbol": "F", "formula": "0.75·Fp",
                "inputs": [{"name": "Fp", "value": "33 700 N"}],
                "value": "25 275 N", "note": "when < 0.9·Fp",
                "source": {"title": "from the lines above", "detail": "", "grade": "derived"},
            },
            {
                "what": "friction", "symbol": "µ", "formula": null, "inputs": [],
                "value": null, "note": null,
                "source": {"title": "given", "detail": "", "grade": "given"},
            },
        ],
        "remarks": ["Dry threads."],
        "limits": ["Not for bolts tightened by angle."],
    });
    let parsed: serde_json::Value = serde_json::from_str(&clamp().json()).unwrap();
    assert_eq!(parsed, expected);
}

#[test]
fn one_working_carries_another() {
    let both = Working::new("Torque")
        .then(clamp())
        .then(Working::new("no lines"));
    assert_eq!(
        (both.lines.len(), both.remarks.len(), both.limits.len()),
        (3, 1, 1)
    );
}
