//! What is given out, and what may be written.

use super::guard;
use super::source::{NotWritten, known_by};
use super::state::{Now, State};
use crate::parameters::rewritten;
use axum::Router;
use axum::body::{Body, Bytes, to_bytes};
use axum::extract::{Request, State as Shared};
use axum::http::{HeaderValue, StatusCode, header};
use axum::middleware::{Next, from_fn_with_state};
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use futures_util::stream;
use serde::Deserialize;
use serde_json::json;
use std::convert::Infallible;
use std::net::SocketAddr;
use std::sync::Arc;
use std::time::Duration;

/// A write is no longer, bytes.
const MOST_BYTES: usize = 16 << 10;
/// A write must have come whole by then.
const PATIENCE: Duration = Duration::from_secs(5);
/// So often somebody who waits for news hears that there is none, so that a dead line is noticed.
const BEAT: Duration = Duration::from_secs(15);

/// What a handler needs.
#[derive(Clone)]
pub(super) struct Desk {
    pub(super) state: Arc<State>,
    pub(super) at: SocketAddr,
}

/// Everything that can be asked for.
pub(super) fn routes(desk: Desk) -> Router {
    Router::new()
        .route("/", get(page))
        .route("/island", get(island))
        .route("/events", get(events))
        .route("/change", post(change))
        .route("/undo", post(undo))
        .fallback(|| async { (StatusCode::NOT_FOUND, "there is nothing here") })
        .layer(from_fn_with_state(desk.clone(), guarded))
        .with_state(desk)
}

/// Nothing passes unseen, and nothing is kept by those who get it.
async fn guarded(Shared(desk): Shared<Desk>, request: Request, next: Next) -> Response {
    let passed = guard::check(
        request.method(),
        request.headers(),
        desk.at,
        &desk.state.token,
    );
    let mut response = match passed {
        Ok(()) => next.run(request).await,
        Err(refused) => refused.into_response(),
    };
    let headers = response.headers_mut();
    for (name, value) in [
        (header::CACHE_CONTROL, "no-store"),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::REFERRER_POLICY, "no-referrer"),
        (header::X_FRAME_OPTIONS, "DENY"),
        (
            header::CONTENT_SECURITY_POLICY,
            "default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'; img-src blob: data:; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
        ),
    ] {
        headers.insert(name, HeaderValue::from_static(value));
    }
    response
}

fn html(text: String) -> Response {
    ([(header::CONTENT_TYPE, "text/html; charset=utf-8")], text).into_response()
}

const WAITING: &str = include_str!("../../../templates/book/waiting.html");

async fn page(Shared(desk): Shared<Desk>) -> Response {
    let now = desk.state.now();
    let waiting = || {
        let report = now.report.replace('&', "&amp;").replace('<', "&lt;");
        WAITING.replace("{{ report }}", &report)
    };
    html(now.page.as_deref().cloned().unwrap_or_else(waiting))
}

/// The island of the last good file, and what is wrong with the file now.
async fn island(Shared(desk): Shared<Desk>) -> Response {
    let Now {
        picture,
        report,
        seen,
        page_of,
        ..
    } = desk.state.now();
    let findings = picture.as_ref().map_or("", |p| p.findings.as_str());
    let head = json!({"seen": seen, "page_of": page_of, "report": report, "findings": findings});
    let head = head.to_string();
    let data = picture.as_ref().map_or("null", |p| p.island.as_str());
    let text = format!(
        "{},\"island\":{data}}}",
        head.strip_suffix('}').unwrap_or(&head)
    );
    ([(header::CONTENT_TYPE, "application/json")], text).into_response()
}

/// News, one line whenever something changed.
async fn events(Shared(desk): Shared<Desk>) -> Response {
    let news = desk.state.listen();
    let lines = stream::unfold((news, true), |(mut news, first)| async move {
        let line = if first {
            ": welcome\n\n".to_owned()
        } else {
            match tokio::time::timeout(BEAT, news.changed()).await {
                Ok(Ok(())) => format!("data: {}\n\n", *news.borrow_and_update()),
                Ok(Err(_)) => return None,
                Err(_) => ": still here\n\n".to_owned(),
            }
        };
        Some((Ok::<_, Infallible>(Bytes::from(line)), (news, false)))
    });
    let kind = [(header::CONTENT_TYPE, "text/event-stream")];
    (kind, Body::from_stream(lines)).into_response()
}

/// A value to be written otherwise.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Write {
    key: String,
    value: String,
    /// By which the text is known that the page shows.
    seen: String,
}

type Said = (StatusCode, String);

fn refuse(status: StatusCode, why: impl Into<String>) -> Said {
    (status, why.into())
}

async fn body(request: Request) -> Result<Bytes, Said> {
    let whole = tokio::time::timeout(PATIENCE, to_bytes(request.into_body(), MOST_BYTES)).await;
    match whole {
        Err(_) => Err(refuse(
            StatusCode::REQUEST_TIMEOUT,
            "the write came too slowly",
        )),
        Ok(Err(_)) => Err(refuse(
            StatusCode::PAYLOAD_TOO_LARGE,
            "the write is too long",
        )),
        Ok(Ok(bytes)) => Ok(bytes),
    }
}

async fn change(Shared(desk): Shared<Desk>, request: Request) -> Result<String, Said> {
    let bytes = body(request).await?;
    let write: Write = serde_json::from_slice(&bytes)
        .map_err(|e| refuse(StatusCode::BAD_REQUEST, format!("this is no write: {e}")))?;
    let before = current(&desk, &write.seen)?;
    let after = rewritten(&before, &write.key, &write.value)
        .map_err(|why| refuse(StatusCode::UNPROCESSABLE_ENTITY, why.words()))?;
    replace(&desk, &before, &after)?;
    let known = known_by(&after);
    if before != after {
        desk.state.remember(before, known.clone());
    }
    Ok(known)
}

async fn undo(Shared(desk): Shared<Desk>, request: Request) -> Result<String, Said> {
    body(request).await?;
    let now = desk.state.now();
    let Some((before, after)) = now.undo.last() else {
        return Err(refuse(
            StatusCode::CONFLICT,
            "there is nothing to take back",
        ));
    };
    let text = current(&desk, after)?;
    replace(&desk, &text, before)?;
    desk.state.forget();
    Ok(known_by(before))
}

/// The text of the file, if it is still the one that is known.
fn current(desk: &Desk, known: &str) -> Result<String, Said> {
    let text = desk
        .state
        .source
        .read()
        .map_err(|why| refuse(StatusCode::CONFLICT, why))?;
    if known_by(&text) == known {
        Ok(text)
    } else {
        Err(changed())
    }
}

fn changed() -> Said {
    refuse(
        StatusCode::CONFLICT,
        "the file was changed meanwhile: nothing was written; look again and repeat it",
    )
}

fn replace(desk: &Desk, before: &str, after: &str) -> Result<(), Said> {
    match desk.state.source.replace(before, after) {
        Ok(()) => Ok(()),
        Err(NotWritten::Changed) => Err(changed()),
        Err(NotWritten::Disk(e)) => {
            let why = format!("the file could not be written: {e}");
            Err(refuse(StatusCode::INTERNAL_SERVER_ERROR, why))
        }
    }
}
