//! What a bed wants, what was put down and the fertilizer shed in the file, and what is said of them when they are
//! wrong.

use jiff::civil::date;
use quillet::catalog::{Analysis, MaterialId, StageId};
use quillet::layout::{
    Amount, Basis, BedChange, Credit, CreditKind, Dressing, DressingId, Edit, EditError, Injecting, Item, Label,
    Layout, Lime, NutrientRate, NutrientUnits, Placement, Recommendation, ShedEdit, Used, When, check, file,
};
use quillet::quantity::{Concentration, Fraction, Length, Mass, MassPerArea, MassPerLength};

use crate::garden::{CORN, applied, garden};

const FEEDING: &str = include_str!("../files/layout-v2-feeding.ron");

fn over_ground(kilograms: f64) -> MassPerArea {
    MassPerArea::kilograms_per_square_metre(kilograms)
}

fn injected(used: Vec<Used>) -> Dressing {
    Dressing {
        id: DressingId(0),
        name: "Through the tape".to_owned(),
        material: MaterialId("own_pond_mix".to_owned()),
        basis: Basis::Nitrogen,
        amount: Amount::PerArea(over_ground(0.001)),
        typed_in: None,
        placement: Placement::Injected(Injecting {
            times: 3,
            to_water: true,
            ..Injecting::default()
        }),
        when: When::Stage(StageId("knee_high".to_owned())),
        used,
    }
}

/// The garden with a laboratory's paper, credits, dressings and a shed.
fn fed() -> Layout {
    let label = Label {
        name: "Pond mix".to_owned(),
        analysis: Analysis::percent(12.3, 4.0, 0.1),
        bag: Some(Mass::kilograms(20.0)),
        price: Some(31.5),
        cup: Some(Mass::kilograms(0.25)),
        at_hand: Some(Mass::kilograms(7.5)),
        made_of: Some(MaterialId("fish_meal".to_owned())),
        available_n: Fraction::new(0.5),
        organic: Some(true),
        ..Label::default()
    };
    let paper = Recommendation {
        n: Some(NutrientRate::PerArea(over_ground(0.015))),
        p2o5: Some(NutrientRate::PerRowLength(MassPerLength::kilograms_per_metre(0.002))),
        elemental: true,
        rows_apart: Some(Length::metres(1.8)),
        lime: Some(Lime {
            rate: over_ground(0.25),
            typed_in: None,
            purity: 0.7,
        }),
        ..Recommendation::default()
    };
    let credits = [
        CreditKind::Compost {
            of: None,
            rate: over_ground(2.0),
            typed_in: None,
            analysis: Analysis::percent(1.5, 1.0, 1.0).expect("under a hundred"),
            available_n: Fraction::new(0.1).expect("within a whole"),
        },
        CreditKind::Nitrogen {
            rate: over_ground(0.005),
            typed_in: None,
        },
        CreditKind::Water {
            nitrate_n: Concentration::parts_per_million(8.0),
            as_nitrate: true,
            depth: Length::metres(0.3),
        },
        CreditKind::Down {
            n: over_ground(0.001),
            p2o5: MassPerArea::ZERO,
            k2o: over_ground(0.002),
            typed_in: NutrientUnits::default(),
        },
    ];
    let used = Used {
        amount: Mass::kilograms(1.25),
        on: Some(date(2026, 6, 14)),
    };
    let mut edits = vec![
        Edit::SetOrganic(true),
        Edit::Shed(ShedEdit::AddOwn(label)),
        Edit::Shed(ShedEdit::Put(
            MaterialId("urea".to_owned()),
            Label {
                at_hand: Some(Mass::kilograms(2.0)),
                ..Label::default()
            },
        )),
        Edit::Bed(CORN, BedChange::SetZone("Lower".to_owned())),
        Edit::Bed(CORN, BedChange::SetPlanted(Some(date(2026, 5, 10)))),
        Edit::Bed(CORN, BedChange::SetRecommendation(Some(paper))),
        Edit::Bed(CORN, BedChange::SetPublished(Some("light sand".to_owned()))),
        Edit::Bed(CORN, BedChange::SetHoldsToPlan(true)),
        Edit::Bed(
            CORN,
            BedChange::LayDown {
                name: "feed".to_owned(),
                dressings: vec![
                    injected(vec![used]),
                    Dressing {
                        when: When::Day(date(2026, 7, 1)),
                        ..injected(Vec::new())
                    },
                ],
                in_place: true,
            },
        ),
    ];
    edits.extend(credits.into_iter().enumerate().map(|(place, what)| {
        let name = format!("credit {place}");
        Edit::Bed(CORN, BedChange::AddCredit(Credit { name, what }))
    }));
    applied(&garden(), &edits)
}

#[test]
fn feeding_reads_back_equal() {
    let layout = fed();
    assert_eq!(check(&layout), []);
    assert_eq!(file::read(&file::write(&layout)), Ok(layout));
}

#[test]
fn feeding_in_the_file_is_what_it_was_the_day_it_was_set() {
    // Old programs and people's own notes rely on it: a change here needs a new version.
    assert_eq!(file::write(&fed()), FEEDING);
}

#[test]
fn what_is_wrong_is_said_at_its_place() {
    for (old, new, message) in [
        (
            "(12.3, 4.0, 0.1)",
            "(62.3, 40, 0.1)",
            "the analysis all together must be from 0 to 100.",
        ),
        (
            "(12.3, 4.0, 0.1)",
            "(-1, 4, 0.1)",
            "a percentage of the analysis must be from 0 to 100.",
        ),
        ("bag_kg: 20.0", "bag_kg: 0", "this weight must be more than zero."),
        ("price: 31.5", "price: -1", "the price must not be less than zero."),
        (
            "purity_part: 0.7",
            "purity_part: 7",
            "the purity of the lime must be from 0 to 2.",
        ),
        ("times: 3", "times: 0", "this number must be from 1 to 366."),
        (
            "tank_m3: 0.01892705892",
            "tank_m3: 0",
            "what the stock tank holds must be more than zero.",
        ),
        (
            "ratio: 100.0",
            "ratio: 0.5",
            "the injection ratio must be from 1 to 100000.",
        ),
        (
            "on: \"2026-06-14\"",
            "on: \"2026-06-31\"",
            "this day is none of the calendar",
        ),
        (
            "kg_per_m2: 2.0,",
            "kg_per_m2: -2.0,",
            "this rate must not be less than zero.",
        ),
    ] {
        assert!(FEEDING.contains(old), "the file lacks {old}");
        let text = FEEDING.replacen(old, new, 1);
        let error = file::read(&text).expect_err(new);
        let said = error.to_string().to_lowercase();
        assert!(said.contains(message.trim_end_matches('.')), "{new}: {said}");
        let place = error.place().expect("a place");
        let line = FEEDING.lines().nth(place.line - 1).unwrap_or_default();
        assert!(
            line.contains(old.split(':').next().unwrap_or(old).trim_start_matches('(')),
            "{new}: {line}"
        );
    }
}

#[test]
fn laying_down_keeps_what_was_done_and_gives_each_an_id_of_its_own() {
    let layout = fed();
    let bed = layout.bed(CORN).expect("the corn");
    let next = layout.next_id();
    let lay = |in_place| {
        Edit::Bed(
            CORN,
            BedChange::LayDown {
                name: "feed".to_owned(),
                dressings: vec![injected(Vec::new()), injected(Vec::new())],
                in_place,
            },
        )
    };
    let ids = |layout: &Layout| -> Vec<u32> {
        let bed = layout.bed(CORN).expect("the corn");
        bed.dressings.iter().map(|dressing| dressing.id.0).collect()
    };
    let done = bed
        .dressings
        .iter()
        .find(|dressing| !dressing.used.is_empty())
        .expect("one done");
    assert_eq!(ids(&applied(&layout, &[lay(true)])), [done.id.0, next, next + 1]);
    let mut all = ids(&layout);
    all.extend([next, next + 1]);
    assert_eq!(ids(&applied(&layout, &[lay(false)])), all);
}

#[test]
fn the_shed_refuses_what_it_cannot_keep() {
    let layout = fed();
    let refused = |edit: ShedEdit| layout.apply(&Edit::Shed(edit)).expect_err("refused");
    let named = |name: &str| Label {
        name: name.to_owned(),
        analysis: Analysis::percent(5.0, 5.0, 5.0),
        ..Label::default()
    };
    assert_eq!(
        refused(ShedEdit::AddOwn(named(" pond MIX "))),
        EditError::MaterialTaken("pond MIX".to_owned())
    );
    assert!(matches!(
        refused(ShedEdit::AddOwn(named("Urea, granular"))),
        EditError::MaterialTaken(_)
    ));
    assert_eq!(
        refused(ShedEdit::AddOwn(Label {
            analysis: None,
            ..named("Barn mix")
        }))
        .to_string(),
        "Barn mix: the analysis is missing."
    );
    let twice = refused(ShedEdit::Put(MaterialId("urea".to_owned()), Label::default()));
    assert_eq!(twice.to_string(), "\"urea\" stands in the shed twice.");
    let own = layout
        .shed_material(&MaterialId("own_pond_mix".to_owned()))
        .expect("the mix");
    let still = refused(ShedEdit::Remove(own.id));
    assert_eq!(still.to_string(), "Pond mix is still named by Corn block.");
    // A material of the catalogue can go at any time.
    let urea = layout.shed_material(&MaterialId("urea".to_owned())).expect("urea");
    let without = applied(&layout, &[Edit::Shed(ShedEdit::Remove(urea.id))]);
    assert!(!without.has(Item::Shed(urea.id)));
}

#[test]
fn a_credit_is_changed_and_taken_away_by_its_place() {
    let layout = fed();
    let credit = Credit {
        name: " clover sod ".to_owned(),
        what: CreditKind::Nitrogen {
            rate: over_ground(0.01),
            typed_in: None,
        },
    };
    let after = applied(&layout, &[Edit::Bed(CORN, BedChange::SetCredit(1, credit.clone()))]);
    assert_eq!(after.bed(CORN).expect("the corn").feeding.credits[1].name, "clover sod");
    let after = applied(&after, &[Edit::Bed(CORN, BedChange::RemoveCredit(0))]);
    assert_eq!(after.bed(CORN).expect("the corn").feeding.credits[0].name, "clover sod");
    for change in [BedChange::SetCredit(4, credit), BedChange::RemoveCredit(4)] {
        assert_eq!(
            layout.apply(&Edit::Bed(CORN, change)),
            Err(EditError::Gone(Item::Bed(CORN)))
        );
    }
}

#[test]
fn feedings_done_one_by_one_are_kept_in_their_order() {
    let each = [(1.25, Some("2026-06-14")), (0.0, None), (2.5, Some("2026-06-28"))];
    let used: Vec<Used> = each
        .into_iter()
        .map(|(kg, on)| Used {
            amount: Mass::kilograms(kg),
            on: on.map(|day| day.parse().expect("a day")),
        })
        .collect();
    let layout = applied(
        &garden(),
        &[Edit::Bed(CORN, BedChange::AddDressing(injected(used.clone())))],
    );
    let text = file::write(&layout);
    let again = file::read(&text).expect("read");
    let dressings = &again.bed(CORN).expect("the corn").dressings;
    assert_eq!(dressings.last().expect("the last").used, used);
    // What cannot be is refused at its place.
    for (right, wrong, said) in [
        ("kg: 1.25", "kg: -1.25", "less than zero"),
        ("kg: 1.25", "lb: 1.25", "lb"),
        ("on: \"2026-06-14\"", "on: \"2026-06-31\"", "none of the calendar"),
    ] {
        assert!(text.contains(right));
        let error = file::read(&text.replacen(right, wrong, 1))
            .expect_err(wrong)
            .to_string();
        assert!(error.contains(said), "{error}");
        assert!(error.contains("line"), "{error}");
    }
}
