//! Cells that hang together.

/// Patches of marked cells that touch by their sides, each as a list of places.
pub fn patches(marked: &[bool], width: usize) -> Vec<Vec<usize>> {
    let mut left = marked.to_vec();
    let mut out = Vec::new();
    let mut queue = Vec::new();
    for start in 0..left.len() {
        if !left[start] {
            continue;
        }
        left[start] = false;
        queue.push(start);
        let mut patch = Vec::new();
        while let Some(at) = queue.pop() {
            patch.push(at);
            let mut visit = |next: usize| {
                if left[next] {
                    left[next] = false;
                    queue.push(next);
                }
            };
            if at % width > 0 {
                visit(at - 1);
            }
            if at % width + 1 < width {
                visit(at + 1);
            }
            if at >= width {
                visit(at - width);
            }
            if at + width < marked.len() {
                visit(at + width);
            }
        }
        out.push(patch);
    }
    out
}
