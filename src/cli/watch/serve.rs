//! Accepting connections: so many at once, and none that says nothing.

use super::routes::{Desk, routes};
use super::state::State;
use crate::cli::outcome::Trouble;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::service::TowerToHyperService;
use std::net::SocketAddr;
use std::sync::Arc;
use std::time::Duration;
use tokio::net::TcpListener;
use tokio::sync::Semaphore;

/// So many connections at once; whoever comes then is turned away.
const MOST: usize = 64;
/// The head of a request must have come by then.
const PATIENCE: Duration = Duration::from_secs(5);

/// Serves until Ctrl-C; `begun` is told where.
pub(super) async fn serve(
    address: SocketAddr,
    state: Arc<State>,
    begun: impl FnOnce(SocketAddr),
) -> Result<(), Trouble> {
    let cannot = |e: std::io::Error| {
        let what = format!("cannot serve at {address}: {e}");
        Trouble::new(what, "choose another port with --port")
    };
    let listener = TcpListener::bind(address).await.map_err(cannot)?;
    let at = listener.local_addr().map_err(cannot)?;
    begun(at);
    let app = routes(Desk { state, at });
    let room = Arc::new(Semaphore::new(MOST));
    let accepting = async {
        loop {
            let Ok((stream, _)) = listener.accept().await else {
                // Out of descriptors, for example: others may end meanwhile.
                tokio::time::sleep(Duration::from_millis(50)).await;
                continue;
            };
            let Ok(place) = Arc::clone(&room).try_acquire_owned() else {
                continue;
            };
            let service = TowerToHyperService::new(app.clone());
            tokio::spawn(async move {
                let served = http1::Builder::new()
                    .timer(TokioTimer::new())
                    .header_read_timeout(PATIENCE)
                    .max_buf_size(64 << 10)
                    .serve_connection(TokioIo::new(stream), service);
                let _ = served.await;
                drop(place);
            });
        }
    };
    tokio::select! {
        () = accepting => Ok(()),
        stopped = tokio::signal::ctrl_c() => stopped.map_err(cannot),
    }
}
