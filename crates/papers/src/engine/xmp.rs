//! What a PDF says of the e-invoice within it, in its XMP packet: the library that writes the PDF
//! has no room for it, so it is put in afterwards.
//!
//! The packet lies in the file as it is, so it is replaced where it stands: the length of its
//! stream, the places of the objects behind it and that of their table go with it.

use std::fmt::Write as _;
use std::ops::Range;

/// The namespace of Factur-X's properties.
const NAMESPACE: &str = "urn:factur-x:pdfa:CrossIndustryDocument:invoice:1p0#";

/// The properties, as PDF/A wants each described: name, value, what it is.
fn properties(file: &str) -> [(&'static str, &str, &'static str); 4] {
    [
        (
            "DocumentFileName",
            file,
            "The name of the embedded XML document",
        ),
        ("DocumentType", "INVOICE", "The type of the document"),
        (
            "Version",
            "1.0",
            "The version of the standard of the XML document",
        ),
        (
            "ConformanceLevel",
            "EN 16931",
            "The conformance level of the XML document",
        ),
    ]
}

/// The PDF with the properties in it; none, if it is no file as the library writes them.
pub fn with_e_invoice(pdf: &[u8], file: &str) -> Option<Vec<u8>> {
    // A photo may have a packet of its own; the last one is the paper's.
    let dictionary = rfind(pdf, b"/Type/Metadata/Subtype/XML")?;
    let packet = between(
        &pdf[dictionary..],
        b"<?xpacket begin=",
        b"<?xpacket end=\"r\"?>",
    )?;
    let packet = dictionary + packet.start..dictionary + packet.end;
    let old = std::str::from_utf8(&pdf[packet.clone()]).ok()?;
    let new = told(old, file)?;
    let grown = new.len().checked_sub(old.len())?;
    let figures = rfind(&pdf[..dictionary], b"/Length ")? + b"/Length ".len()..dictionary;
    let was: usize = text(&pdf[figures.clone()])?.trim().parse().ok()?;
    let length = (was + grown).to_string();
    let moved = grown + length.len() - figures.len();

    let start = rfind(pdf, b"startxref")?;
    let table: usize = text(&pdf[start + b"startxref".len()..])?
        .split_whitespace()
        .next()?
        .parse()
        .ok()?;
    let trailer = rfind(pdf, b"trailer")?;
    let mut out = Vec::with_capacity(pdf.len() + moved + 8);
    out.extend_from_slice(&pdf[..figures.start]);
    out.extend_from_slice(length.as_bytes());
    out.extend_from_slice(&pdf[figures.end..packet.start]);
    out.extend_from_slice(new.as_bytes());
    out.extend_from_slice(pdf.get(packet.end..table)?);
    for line in text(pdf.get(table..trailer)?)?.split_inclusive('\n') {
        out.extend_from_slice(row(line, packet.start, moved).as_bytes());
    }
    out.extend_from_slice(&pdf[trailer..start]);
    out.extend_from_slice(format!("startxref\n{}\n%%EOF", table + moved).as_bytes());
    Some(out)
}

/// The packet with what is told of the e-invoice.
fn told(packet: &str, file: &str) -> Option<String> {
    let mut described = String::new();
    let mut stated = String::new();
    for (name, value, what) in properties(file) {
        let _ = write!(
            described,
            "<rdf:li rdf:parseType=\"Resource\"><pdfaProperty:category>external</pdfaProperty:category>\
             <pdfaProperty:description>{what}</pdfaProperty:description>\
             <pdfaProperty:name>{name}</pdfaProperty:name>\
             <pdfaProperty:valueType>Text</pdfaProperty:valueType></rdf:li>"
        );
        let _ = write!(stated, "<fx:{name}>{value}</fx:{name}>");
    }
    let schema = format!(
        "<rdf:li rdf:parseType=\"Resource\"><pdfaSchema:schema>Factur-X PDFA Extension Schema</pdfaSchema:schema>\
         <pdfaSchema:namespaceURI>{NAMESPACE}</pdfaSchema:namespaceURI><pdfaSchema:prefix>fx</pdfaSchema:prefix>\
         <pdfaSchema:property><rdf:Seq>{described}</rdf:Seq></pdfaSchema:property></rdf:li>"
    );
    let stated = format!(
        "<rdf:Description rdf:about=\"\" xmlns:fx=\"{NAMESPACE}\">{stated}</rdf:Description>"
    );
    let bag = packet.find("</rdf:Bag></pdfaExtension:schemas>")?;
    let end = packet.find("</rdf:RDF>")?;
    let [head, middle, tail] = [&packet[..bag], &packet[bag..end], &packet[end..]];
    Some([head, &schema, middle, &stated, tail].concat())
}

/// A row of the table of objects: what stands behind the packet has moved.
fn row(line: &str, behind: usize, moved: usize) -> String {
    let place = line.get(..10).and_then(|place| place.parse::<usize>().ok());
    match place {
        Some(place) if line.len() == 20 && place > behind => {
            format!("{:010}{}", place + moved, &line[10..])
        }
        _ => line.to_owned(),
    }
}

fn text(bytes: &[u8]) -> Option<&str> {
    std::str::from_utf8(bytes).ok()
}

fn find(all: &[u8], part: &[u8]) -> Option<usize> {
    all.windows(part.len()).position(|window| window == part)
}

fn rfind(all: &[u8], part: &[u8]) -> Option<usize> {
    all.windows(part.len()).rposition(|window| window == part)
}

/// From where one begins to where the other ends.
fn between(all: &[u8], from: &[u8], to: &[u8]) -> Option<Range<usize>> {
    let start = find(all, from)?;
    let behind = start + from.len();
    let end = find(&all[behind..], to)?;
    Some(start..behind + end + to.len())
}
