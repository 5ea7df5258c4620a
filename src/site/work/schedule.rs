//! Steps put into a calendar: a serial schedule by latest start.
//!
//! Of the steps whose forerunners have their times, the one that the network lets begin last comes last; each takes the first
//! working time after its forerunners and waits at which there are hands for it. What has its time keeps it.

use super::calendar::{Calendar, Stretch};
use super::network::{Link, Minutes, Network};
use super::pour_day::PourDay;
use std::collections::BTreeSet;

/// When a step is worked on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// By the crew in its hours.
    Crew,
    /// The same, in hours fit for coats.
    Coat,
    /// By licensed trades in theirs, without the crew's hands.
    Trades,
    /// What is checked straight before the pour.
    Lead,
    /// The pour: without a pause, in fit hours.
    Pour,
    /// Straight after what it waits for, whatever the hour, without a pause.
    AsSet,
}

/// One step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Task {
    /// How long it takes.
    pub takes: Minutes,
    /// How many pairs of the crew's hands it holds.
    pub hands: u32,
    /// When it is worked on.
    pub kind: Kind,
    /// True where it is not left half done over night.
    pub at_once: bool,
}

impl Task {
    /// The stretches in which it is worked on from a moment on.
    pub fn work(&self, calendar: &Calendar, at: Minutes) -> Option<Vec<Stretch>> {
        if self.at_once {
            calendar.work_at_once(at, self.takes)
        } else {
            calendar.work(at, self.takes)
        }
    }

    /// Whose calendar it keeps; `None` where it keeps none.
    pub fn calendar<'a>(&self, calendars: &'a Calendars) -> Option<&'a Calendar> {
        match self.kind {
            Kind::Crew => Some(&calendars.crew),
            Kind::Coat => Some(&calendars.coat),
            Kind::Trades => Some(&calendars.trades),
            Kind::Lead | Kind::Pour | Kind::AsSet => None,
        }
    }
}

/// The calendars.
#[derive(Clone, Debug, PartialEq)]
pub struct Calendars {
    /// The crew's.
    pub crew: Calendar,
    /// The crew's without hours that are not fit for coats.
    pub coat: Calendar,
    /// That of licensed trades.
    pub trades: Calendar,
}

/// What the pour asks for.
pub struct Pouring<'a> {
    /// When placing is to begin, where the file says.
    pub at: Option<Minutes>,
    /// From when to when there is a forecast.
    pub covered: Option<Stretch>,
    /// The beginnings of its hours in which concrete may be placed.
    pub fit: BTreeSet<Minutes>,
    /// The wait of each link by its number that the setting clock knows for a beginning.
    pub waits: &'a dyn Fn(Minutes) -> Vec<(usize, Minutes)>,
}

/// Steps, links, hands and calendars.
pub struct Schedule<'a> {
    /// The steps.
    pub tasks: &'a [Task],
    /// How many pairs of hands there are.
    pub crew: u32,
    /// The calendars.
    pub calendars: &'a Calendars,
    /// What the pour asks for.
    pub pouring: Pouring<'a>,
}

/// When each step is worked on.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Scheduled {
    /// The stretches of each step; none where it is not done within ten years.
    pub stretches: Vec<Vec<Stretch>>,
    /// The links with the waits that the pour's moment makes.
    pub links: Vec<Link>,
    /// True when the file's moment for the pour comes before all is ready.
    pub too_early: bool,
}

/// Hands that are held.
type Held = (Stretch, u32);

struct Run<'a, 'b> {
    of: &'b Schedule<'a>,
    held: Vec<Held>,
    /// When the pour begins, once that is known.
    begin: Option<Minutes>,
    done: Scheduled,
}

impl Schedule<'_> {
    /// Gives every step its time, from minute `from` on; `None` where some wait for each other.
    pub fn run(&self, links: &[Link], from: Minutes) -> Option<Scheduled> {
        let network = Network {
            takes: self.tasks.iter().map(|t| t.takes).collect(),
            links: links.to_vec(),
        };
        let latest = network.passes()?.latest;
        let mut run = Run {
            of: self,
            held: Vec::new(),
            begin: None,
            done: Scheduled {
                stretches: vec![Vec::new(); self.tasks.len()],
                links: links.to_vec(),
                too_early: false,
            },
        };
        let mut open: Vec<usize> = (0..self.tasks.len()).collect();
        while !open.is_empty() {
            let is_ready = |i: &&usize| {
                let mut before = links.iter().filter(|l| l.to == **i);
                before.all(|l| !open.contains(&l.from))
            };
            // What belongs to the pour follows it at once.
            let is_free = |i: usize| {
                let kind = self.tasks[i].kind;
                kind != Kind::AsSet && (kind != Kind::Pour || run.begin.is_none())
            };
            let next = open.iter().filter(is_ready);
            let next = next
                .min_by_key(|i| (is_free(**i), latest[**i], **i))
                .copied()?;
            open.retain(|i| *i != next);
            run.give(next, from);
        }
        Some(run.done)
    }
}

impl Run<'_, '_> {
    /// Gives one step its time; none where one before it has none.
    fn give(&mut self, step: usize, from: Minutes) {
        let Some(ready) = self.ready(step, from) else {
            return;
        };
        let task = self.of.tasks[step];
        let calendars = self.of.calendars;
        let stretches = match task.kind {
            Kind::AsSet => Some(vec![(ready, ready + task.takes)]),
            Kind::Trades => task.work(&calendars.trades, ready),
            Kind::Crew => self.first_free(&calendars.crew, task, ready),
            Kind::Coat => self.first_free(&calendars.coat, task, ready),
            Kind::Lead => self.lead(step, ready, task),
            Kind::Pour => {
                let begin = self.begin.or_else(|| self.pour(step, ready, None));
                begin.map(|b| vec![(b, b + task.takes)])
            }
        };
        let stretches = stretches.unwrap_or_default();
        if task.kind != Kind::Trades {
            self.held.extend(stretches.iter().map(|s| (*s, task.hands)));
        }
        self.done.stretches[step] = stretches;
    }

    /// When everything before a step is done and has waited.
    fn ready(&self, step: usize, from: Minutes) -> Option<Minutes> {
        let before = self.done.links.iter().filter(|l| l.to == step);
        before
            .map(|l| Some(self.done.stretches[l.from].last()?.1 + l.wait))
            .try_fold(from, |ready, end| Some(ready.max(end?)))
    }

    fn first_free(&self, calendar: &Calendar, task: Task, ready: Minutes) -> Option<Vec<Stretch>> {
        let mut at = ready;
        loop {
            let stretches = task.work(calendar, at)?;
            match self.taken_until(&stretches, task.hands) {
                None => return Some(stretches),
                Some(until) => at = until.max(at + 1),
            }
        }
    }

    /// The end of what holds hands that a step would need; `None` when there are enough.
    fn taken_until(&self, stretches: &[Stretch], hands: u32) -> Option<Minutes> {
        stretches.iter().find_map(|s| {
            let over = || {
                let held = self.held.iter();
                held.filter(|h| h.1 > 0 && h.0.0 < s.1 && h.0.1 > s.0)
            };
            // The most hands are held where some stretch begins.
            let moments = over().map(|h| h.0.0.max(s.0)).chain([s.0]);
            moments
                .filter(|m| {
                    let there = over().filter(|h| h.0.0 <= *m && h.0.1 > *m);
                    there.map(|h| h.1).sum::<u32>().saturating_add(hands) > self.of.crew
                })
                .filter_map(|m| {
                    let there = over().filter(|h| h.0.0 <= m && h.0.1 > m);
                    there.map(|h| h.0.1).min()
                })
                .min()
        })
    }

    /// The stretch of what is checked before the pour: the pour begins with its end.
    fn lead(&mut self, step: usize, ready: Minutes, task: Task) -> Option<Vec<Stretch>> {
        let pour = self.done.links.iter().find(|l| l.from == step)?.to;
        let begin = self.pour(pour, ready + task.takes, Some(task))?;
        self.begin = Some(begin);
        Some(vec![(begin - task.takes, begin)])
    }

    /// When the pour begins; the waits of the setting clock are set by it.
    fn pour(&mut self, step: usize, ready: Minutes, lead: Option<Task>) -> Option<Minutes> {
        let pouring = &self.of.pouring;
        let task = self.of.tasks[step];
        let links = self.done.links.iter().enumerate();
        let mut after = links.filter(|(_, l)| l.from == step);
        let follower = after.find(|(_, l)| self.of.tasks[l.to].kind == Kind::AsSet);
        let follower = follower.map(|(number, l)| (number, self.of.tasks[l.to]));
        // Floating and trowelling, after the wait of the setting clock.
        let finishing = |t: Minutes| {
            let (number, after) = follower?;
            let known = (pouring.waits)(t).into_iter().find(|w| w.0 == number);
            let begin = t + task.takes + known.map_or(0, |w| w.1);
            Some(((begin, begin + after.takes), after.hands))
        };
        let block = |t: Minutes| finishing(t).map_or(task.takes, |f| f.0.1 - t);
        let is_free = |t: Minutes| {
            let leading = lead.map(|l| ((t - l.takes, t), l.hands));
            let placing = Some(((t, t + task.takes), task.hands));
            let mut all = [leading, placing, finishing(t)].into_iter().flatten();
            all.all(|(stretch, hands)| self.taken_until(&[stretch], hands).is_none())
        };
        let day = PourDay {
            crew: &self.of.calendars.crew,
            covered: pouring.covered,
            fit: &pouring.fit,
            lead: lead.map_or(0, |l| l.takes),
            placing: task.takes,
            block: &block,
            is_free: &is_free,
        };
        let asked = pouring.at.filter(|t| *t >= ready);
        let begin = match asked {
            Some(at) => at,
            None => day.begin(ready)?,
        };
        self.done.too_early = pouring.at.is_some() && asked.is_none();
        for (number, wait) in (pouring.waits)(begin) {
            if let Some(link) = self.done.links.get_mut(number) {
                link.wait = wait;
            }
        }
        Some(begin)
    }
}
