//! What can only be looked at, because something in it cannot be read: said where people look.

use maud::{Markup, html};
use shop::view::StuckView;

/// Above every page of such an order.
pub fn banner(unread: &str) -> Markup {
    html! {
        div class="caution" role="alert" {
            p class="strong" { "This order can only be looked at." }
            p { (shop::say::capital(unread)) "." }
            p { "What is shown here lacks it: go by the vehicle, not by this page. What is told about it waits on the device." }
        }
    }
}

/// On the floor: each part, and what waits for it.
pub fn list(stuck: &[StuckView]) -> Markup {
    html! {
        @for one in stuck {
            div class="caution" role="alert" {
                p class="strong" {
                    @if let Some(order) = one.order { a href=(format!("/o/{order}")) { (one.name) } } @else { (one.name) }
                    " can only be looked at"
                }
                p { (shop::say::capital(&one.why)) "." }
                p { (shop::say::capital(&one.mend)) "." }
                @if one.waiting > 0 {
                    p class="strong" {
                        @if one.waiting == 1 { "1 thing told about it waits" } @else { (one.waiting) " things told about it wait" }
                        " on " (one.devices.join(", ")) "."
                    }
                }
            }
        }
    }
}
