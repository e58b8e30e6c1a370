//! A drawing as a value: lines, arcs and text; its layout; its SVG
