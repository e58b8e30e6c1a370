//! Each request is answered in the language of whoever sent it, also what is refused before a page
//! is begun.

use crate::State;
use crate::pages::cookie;
use axum::body::Body;
use axum::extract::{self, Request};
use axum::middleware::Next;
use axum::response::Response;
use phrases::{Language, speaking};
use std::pin::Pin;
use std::task::{Context, Poll};

/// Answers in the language that the person's screens speak, or the shop's.
pub async fn in_language(
    extract::State(state): extract::State<State>,
    request: Request<Body>,
    next: Next,
) -> Response {
    let language = state
        .service
        .language(cookie(request.headers(), "who").as_deref());
    let answer = Box::pin(next.run(request));
    Spoken { language, answer }.await
}

/// An answer that is made in a language: a thread goes on with one answer for a while and then with
/// another, so the language is set whenever it goes on.
struct Spoken<F> {
    language: Language,
    answer: Pin<Box<F>>,
}

impl<F: Future> Future for Spoken<F> {
    type Output = F::Output;

    fn poll(mut self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<F::Output> {
        let language = self.language;
        speaking(language, || self.answer.as_mut().poll(context))
    }
}
