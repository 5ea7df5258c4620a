//! Who may ask.

use axum::http::{HeaderMap, Method, StatusCode, header};
use std::net::SocketAddr;

/// Why a request is refused.
pub(super) type Refused = (StatusCode, &'static str);

/// Passes a request that names this server as its host and, where it writes, comes from this server's own page with the
/// token. A page of another site cannot name this host, nor read the token: it cannot ask for anything.
pub(super) fn check(
    method: &Method,
    headers: &HeaderMap,
    at: SocketAddr,
    token: &str,
) -> Result<(), Refused> {
    let host = only(headers, header::HOST).unwrap_or_default();
    if !hosts(at).contains(&host.to_ascii_lowercase()) {
        return Err((
            StatusCode::MISDIRECTED_REQUEST,
            "this is not the host you asked for",
        ));
    }
    let origin = headers
        .get(header::ORIGIN)
        .map(|o| o.to_str().unwrap_or_default());
    let own = format!("http://{host}");
    if origin.is_some_and(|o| !o.eq_ignore_ascii_case(&own)) {
        return Err((StatusCode::FORBIDDEN, "another site may not ask here"));
    }
    if method == Method::GET || method == Method::HEAD {
        return Ok(());
    }
    if origin.is_none() {
        return Err((
            StatusCode::FORBIDDEN,
            "a write must say where it comes from",
        ));
    }
    let given = only(headers, header::HeaderName::from_static("x-token")).unwrap_or_default();
    if same(given.as_bytes(), token.as_bytes()) {
        Ok(())
    } else {
        Err((
            StatusCode::FORBIDDEN,
            "a write must come with the token of the page",
        ))
    }
}

/// The value of a header that is there once.
fn only(headers: &HeaderMap, name: header::HeaderName) -> Option<&str> {
    let mut values = headers.get_all(name).iter();
    let value = values.next()?;
    values.next().is_none().then(|| value.to_str().ok())?
}

/// The names by which this server may be asked for.
fn hosts(at: SocketAddr) -> Vec<String> {
    let port = at.port();
    let mut hosts = vec![at.to_string()];
    if at.ip().is_loopback() || at.ip().is_unspecified() {
        let names = ["localhost", "127.0.0.1", "[::1]"];
        hosts.extend(names.map(|name| format!("{name}:{port}")));
    }
    hosts
}

/// True when two texts are the same; it takes as long whether they differ early or late.
fn same(a: &[u8], b: &[u8]) -> bool {
    a.len() == b.len() && a.iter().zip(b).fold(0, |sum, (a, b)| sum | (a ^ b)) == 0
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asked(method: &Method, pairs: &[(&'static str, &str)]) -> Result<(), StatusCode> {
        let mut headers = HeaderMap::new();
        for (name, value) in pairs {
            headers.append(*name, value.parse().unwrap());
        }
        let at = "127.0.0.1:8123".parse().unwrap();
        check(method, &headers, at, "secret").map_err(|refused| refused.0)
    }

    #[test]
    fn only_the_page_itself_may_write() {
        let host = ("host", "127.0.0.1:8123");
        let own = ("origin", "http://127.0.0.1:8123");
        assert_eq!(asked(&Method::GET, &[host]), Ok(()));
        assert_eq!(asked(&Method::GET, &[("host", "LOCALHOST:8123")]), Ok(()));
        for wrong in [
            "evil.example",
            "127.0.0.1",
            "127.0.0.1:81",
            "127.0.0.1:8123.evil.example",
            "",
        ] {
            let refused = asked(&Method::GET, &[("host", wrong)]);
            assert_eq!(refused, Err(StatusCode::MISDIRECTED_REQUEST), "{wrong}");
        }
        assert!(asked(&Method::GET, &[]).is_err());
        assert!(asked(&Method::GET, &[host, host]).is_err());
        assert!(asked(&Method::GET, &[host, ("origin", "http://evil.example")]).is_err());
        assert_eq!(
            asked(&Method::POST, &[host, own, ("x-token", "secret")]),
            Ok(())
        );
        for pairs in [
            &[host, own][..],
            &[host, ("x-token", "secret")],
            &[host, own, ("x-token", "secre")],
            &[host, own, ("x-token", "Secret")],
            &[host, ("origin", "null"), ("x-token", "secret")],
        ] {
            assert_eq!(asked(&Method::POST, pairs), Err(StatusCode::FORBIDDEN));
        }
    }
}
