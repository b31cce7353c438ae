//! From drafts to a programme: durations, people, start and finish, hold points in order.

use std::collections::BTreeMap;

use groundhold_quantity::{Length, Time};
use groundhold_working::Trace;

use super::draft::{Book, Draft};
use super::{bounds, ground, remarks, site, wall, ways};
use crate::network::NO_FLOAT;
use crate::rates::days_of;
use crate::three_point::three_point;
use crate::{
    Activity, Arc, Cautioned, Crew, HoldPoint, Levelled, Network, NotAPlan, PersonHours, Programme, THREE_POINT, Task,
    WallWorks, Works, caution, level_people,
};

/// Where the order of work and its hold points come from.
const ORDER: &str = "common practice of landscape works, no source";

pub(crate) fn plan(works: &Works, crew: &Crew) -> Result<Programme, NotAPlan> {
    bounds::check(works, crew)?;
    let drafts = drafted(works);
    let people: Vec<u32> = drafts.iter().map(|d| d.people_most.min(crew.people)).collect();
    let network = network_of(&drafts, &people, crew, |h| h.likely)?;
    let levelled = level_people(&network, &people, crew.people)?;
    let length = |of: fn(&PersonHours) -> Time| length_with(&levelled, &drafts, &people, crew, of);
    let length_days = (length(|h| h.low)?, levelled.network.times().length, length(|h| h.high)?);
    let mut programme = timed(works, crew, drafts, &people, &levelled);
    programme.length_days = length_days;
    programme.shortest_days = network.times().length;
    programme.findings = remarks::remarks(works, crew, &programme);
    Ok(programme)
}

/// Every task of the job, what is needed before what needs it.
fn drafted(works: &Works) -> Vec<Draft> {
    let mut book = Book { works, drafts: vec![] };
    site::begin(&mut book);
    works.pads.iter().for_each(|p| ground::cut(&mut book, p));
    let mut walls: Vec<&WallWorks> = works.walls.iter().collect();
    walls.sort_by(|a, b| order(a.base_above_lowest, b.base_above_lowest).then(a.id.cmp(&b.id)));
    for (i, w) in walls.iter().enumerate() {
        let lower = walls[..i].iter().rev().find(|l| l.base_above_lowest < w.base_above_lowest);
        wall::build(&mut book, w, lower.map(|l| l.id.as_str()));
    }
    works.pads.iter().for_each(|p| ground::fill(&mut book, p));
    works.flights.iter().for_each(|f| ways::steps(&mut book, f));
    works.ramps.iter().for_each(|r| ways::ramp(&mut book, r));
    works.pads.iter().for_each(|p| ground::surface(&mut book, p));
    site::end(&mut book);
    site::hold_first_spade(&mut book);
    book.drafts
}

fn order(a: Length, b: Length) -> std::cmp::Ordering {
    a.to_m().total_cmp(&b.to_m())
}

fn network_of(
    drafts: &[Draft],
    people: &[u32],
    crew: &Crew,
    of: fn(&PersonHours) -> Time,
) -> Result<Network, NotAPlan> {
    let index: BTreeMap<&str, usize> = drafts.iter().enumerate().map(|(i, d)| (d.id.as_str(), i)).collect();
    let activities = drafts.iter().zip(people).map(|(d, &p)| {
        let needs =
            d.needs.iter().filter_map(|n| Some(Arc { of: *index.get(n.task.as_str())?, wait_days: n.wait_days }));
        Activity { id: d.id.clone(), days: days_of(of(&d.hours), p, crew.day), needs: needs.collect() }
    });
    Network::new(activities.collect())
}

/// Length with other hours but the same people handed on in the same order.
fn length_with(
    levelled: &Levelled,
    drafts: &[Draft],
    people: &[u32],
    crew: &Crew,
    of: fn(&PersonHours) -> Time,
) -> Result<f64, NotAPlan> {
    let mut activities = levelled.network.activities().to_vec();
    for ((a, d), p) in activities.iter_mut().zip(drafts).zip(people) {
        a.days = days_of(of(&d.hours), *p, crew.day);
    }
    Ok(Network::new(activities)?.times().length)
}

fn timed(works: &Works, crew: &Crew, drafts: Vec<Draft>, people: &[u32], levelled: &Levelled) -> Programme {
    let times = levelled.network.times();
    let called = caution::called_for(works);
    let mut place: Vec<usize> = (0..drafts.len()).collect();
    let rank = |i: usize| levelled.begun.iter().position(|&b| b == i);
    place.sort_by(|&a, &b| times.start[a].total_cmp(&times.start[b]).then(rank(a).cmp(&rank(b))));
    let mut hold_points: Vec<HoldPoint> = vec![];
    let mut slots: Vec<Option<Draft>> = drafts.into_iter().map(Some).collect();
    let waits = longest_waits(&slots);
    let mut tasks = vec![];
    for i in place {
        let Some(d) = slots[i].take() else { continue };
        let hold_point = d.hold.map(|h| {
            let number = hold_points.len() + 1;
            let (element, before) = (d.element.clone(), d.id.clone());
            hold_points.push(HoldPoint {
                number,
                element,
                before,
                name: h.name.into(),
                checks: h.checks,
                source: ORDER,
            });
            number
        });
        let float = if times.float[i] < NO_FLOAT { 0.0 } else { times.float[i] };
        tasks.push(Task {
            cautions: called.iter().filter(|(c, _)| c.applies_to.contains(&d.kind)).map(|(c, _)| c.id).collect(),
            wait_days: waits.get(&d.id).copied().unwrap_or(0.0),
            people: people[i],
            days: days_of(d.hours.likely, people[i], crew.day),
            start: times.start[i],
            finish: times.finish[i],
            critical: float == 0.0,
            float,
            hold_point,
            id: d.id,
            element: d.element,
            name: d.name,
            how: d.how,
            quantity: d.quantity,
            unit: d.unit,
            hours: d.hours,
            source: d.source,
            needs: d.needs,
            trace: d.trace,
        });
    }
    assembled(tasks, hold_points, called, crew)
}

fn longest_waits(drafts: &[Option<Draft>]) -> BTreeMap<String, f64> {
    let mut waits = BTreeMap::new();
    for n in drafts.iter().flatten().flat_map(|d| &d.needs) {
        let w = waits.entry(n.task.clone()).or_insert(0.0);
        if *w < n.wait_days {
            *w = n.wait_days;
        }
    }
    waits
}

fn assembled(
    tasks: Vec<Task>,
    hold_points: Vec<HoldPoint>,
    called: Vec<(&'static crate::Caution, String)>,
    crew: &Crew,
) -> Programme {
    let mut hours = PersonHours::default();
    for t in &tasks {
        hours.low += t.hours.low;
        hours.likely += t.hours.likely;
        hours.high += t.hours.high;
    }
    let chain = chain(&tasks);
    let days = |of: fn(&PersonHours) -> Time| -> Vec<f64> {
        chain.iter().map(|&i| days_of(of(&tasks[i].hours), tasks[i].people, crew.day)).collect()
    };
    let (low, likely, high) = (days(|h| h.low), days(|h| h.likely), days(|h| h.high));
    let (mean, deviation) = three_point(&low, &likely, &high);
    let waits = tasks.last().map_or(0.0, |t| t.finish) - likely.iter().sum::<f64>();
    let cautions = called
        .into_iter()
        .map(|(caution, here)| {
            let at = tasks.iter().filter(|t| t.cautions.contains(&caution.id));
            Cautioned { caution, here, tasks: at.map(|t| t.id.clone()).collect() }
        })
        .filter(|c| !c.tasks.is_empty());
    Programme {
        cautions: cautions.collect(),
        critical: tasks.iter().filter(|t| t.critical).map(|t| t.id.clone()).collect(),
        expected_days: (mean + waits, deviation),
        expected_trace: Trace::new(&THREE_POINT, vec![low.into(), likely.into(), high.into()]),
        hours,
        tasks,
        hold_points,
        findings: vec![],
        length_days: (0.0, 0.0, 0.0),
        shortest_days: 0.0,
    }
}

/// One chain of tasks that sets the end: from the last one back, each time the one that finished latest before it and is
/// critical (by need with its wait, or because its people came from there).
fn chain(tasks: &[Task]) -> Vec<usize> {
    let last = (0..tasks.len()).max_by(|&a, &b| tasks[a].finish.total_cmp(&tasks[b].finish));
    let mut chain: Vec<usize> = last.into_iter().collect();
    while let Some(&at) = chain.last() {
        let t = &tasks[at];
        let wait = |i: usize| t.needs.iter().find(|n| n.task == tasks[i].id).map_or(0.0, |n| n.wait_days);
        let before = (0..tasks.len()).filter(|&i| {
            i != at
                && tasks[i].critical
                && !chain.contains(&i)
                && (tasks[i].finish + wait(i) - t.start).abs() < NO_FLOAT
        });
        match before.max_by(|&a, &b| tasks[a].finish.total_cmp(&tasks[b].finish)) {
            Some(i) => chain.push(i),
            None => break,
        }
    }
    chain.reverse();
    chain
}
