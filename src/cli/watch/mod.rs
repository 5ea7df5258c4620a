//! `watch`: the build book served on this machine, renewed when the file is saved.
//!
//! A thread builds ([`builder`]) whenever the folder's watcher ([`watcher`]) says that something happened there; the server
//! ([`serve`], [`routes`]) gives out what stands in the shared state ([`state`]). Requests pass a guard ([`guard`]); only the
//! one file can be written ([`source`]).

mod builder;
mod guard;
mod routes;
mod serve;
mod source;
mod state;
mod watcher;

use super::args::WatchArgs;
use super::console;
use super::outcome::{Outcome, Trouble};
use super::trade;
use source::Source;
use state::State;
use std::net::{IpAddr, SocketAddr};
use std::sync::Arc;
use std::sync::mpsc;

/// Serves until it is stopped.
pub(super) fn run(args: &WatchArgs) -> Result<Outcome, Trouble> {
    let trade = trade::read(&args.trade)?;
    if let Some(outcome) = trade.say() {
        return Ok(outcome);
    }
    let source = Source::new(&args.file)?;
    let token = token()?;
    let state = Arc::new(State::new(source.clone(), token));
    let (said, heard) = mpsc::channel();
    let kept = watcher::watch(source.path(), said.clone())?;
    let _ = said.send(());
    let built = Arc::clone(&state);
    std::thread::spawn(move || builder::run(&built, &trade.data, &heard));
    let address = SocketAddr::new(args.address, args.port);
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .map_err(|e| Trouble::new(format!("cannot serve: {e}"), ""))?;
    let served = runtime.block_on(serve::serve(address, Arc::clone(&state), |at| {
        hello(at, args);
    }));
    drop(kept);
    served.map(|()| Outcome::Done)
}

/// Says where the page is.
fn hello(at: SocketAddr, args: &WatchArgs) {
    console::out(&format!(
        "watching {}\nopen http://{at}/ in a browser; Ctrl-C stops\n",
        args.file.display()
    ));
    if !is_loopback(at.ip()) {
        console::err(
            "warning: this address can be reached from other machines: whoever can reach it sees the page and can change the file\n",
        );
    }
}

fn is_loopback(address: IpAddr) -> bool {
    address.is_loopback()
}

/// Thirty-two random bytes in hexadecimal figures.
fn token() -> Result<String, Trouble> {
    let mut bytes = [0u8; 32];
    getrandom::fill(&mut bytes)
        .map_err(|e| Trouble::new(format!("this machine gives no random numbers: {e}"), ""))?;
    Ok(super::manifest::hexadecimal(&bytes))
}
