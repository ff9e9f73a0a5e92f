//! The units that a grower typed rates in, in the layout and in its file.

use quillet::catalog::{Analysis, MaterialId};
use quillet::layout::{
    Amount, Basis, BedChange, Credit, CreditKind, Dressing, DressingId, Edit, Layout, Lime, NutrientRate,
    NutrientUnits, Placement, Recommendation, When, check, file,
};
use quillet::quantity::{Fraction, Mass, MassPerArea, MassPerLength, RateUnit, Units};

use crate::garden::{CORN, applied, garden};

const WITHOUT_UNITS: &str = include_str!("../files/layout-v2-feeding.ron");

fn unit(name: &str) -> Option<RateUnit> {
    Some(RateUnit::named(name).expect("a unit"))
}

/// The garden fed in every unit there is.
fn typed() -> Layout {
    let acre = MassPerArea::pounds_per_acre;
    let paper = Recommendation {
        n: Some(NutrientRate::PerArea(acre(120.0))),
        p2o5: Some(NutrientRate::PerArea(MassPerArea::kilograms_per_hectare(60.0))),
        k2o: Some(NutrientRate::PerRowLength(MassPerLength::pounds_per_100_feet(0.5))),
        lime: Some(Lime {
            rate: MassPerArea::tons_per_acre(2.5),
            typed_in: unit("ton/acre"),
            purity: 1.0,
        }),
        typed_in: NutrientUnits {
            n: unit("lb/acre"),
            p2o5: unit("kg/ha"),
            k2o: unit("lb/100 ft"),
        },
        ..Recommendation::default()
    };
    let credits = [
        CreditKind::Compost {
            of: None,
            rate: MassPerArea::tons_per_acre(10.0),
            typed_in: unit("ton/acre"),
            analysis: Analysis::default(),
            available_n: Fraction::ZERO,
        },
        CreditKind::Nitrogen {
            rate: acre(40.0),
            typed_in: unit("lb/acre"),
        },
        CreditKind::Down {
            n: acre(10.0),
            p2o5: MassPerArea::ZERO,
            k2o: acre(10.0),
            typed_in: NutrientUnits {
                n: unit("g/m²"),
                ..NutrientUnits::default()
            },
        },
    ];
    let amounts = [
        (Amount::PerArea(acre(65.0)), "lb/acre"),
        (
            Amount::PerRowLength(MassPerLength::pounds_per_100_feet(3.0)),
            "oz/10 ft",
        ),
        (Amount::PerPlant(Mass::ounces(2.0)), "g/plant"),
    ];
    let mut edits = vec![Edit::Bed(CORN, BedChange::SetRecommendation(Some(paper)))];
    for (place, what) in credits.into_iter().enumerate() {
        let name = format!("credit {place}");
        edits.push(Edit::Bed(CORN, BedChange::AddCredit(Credit { name, what })));
    }
    for (amount, name) in amounts {
        let dressing = Dressing {
            id: DressingId(0),
            name: name.to_owned(),
            material: MaterialId("urea".to_owned()),
            basis: Basis::Product,
            amount,
            typed_in: unit(name),
            placement: Placement::SideDress { strip: None },
            when: When::Unsaid,
            used: Vec::new(),
        };
        edits.push(Edit::Bed(CORN, BedChange::AddDressing(dressing)));
    }
    applied(&garden(), &edits)
}

#[test]
fn units_that_were_typed_are_in_the_file_and_read_back() {
    let layout = typed();
    assert_eq!(check(&layout), []);
    let text = file::write(&layout);
    assert_eq!(text.matches("typed_in: ").count(), 8, "{text}");
    for kept in [
        "typed_in: (\n                                n: \"lb/acre\",\n                                p2o5: \"kg/ha\",",
        "typed_in: \"ton/acre\"",
        "typed_in: \"oz/10 ft\"",
        "typed_in: \"g/plant\"",
    ] {
        assert!(text.contains(kept), "{kept} in {text}");
    }
    assert_eq!(file::read(&text), Ok(layout));
}

#[test]
fn the_layouts_units_change_and_what_was_typed_stays() {
    let layout = typed();
    let metric = applied(&layout, &[Edit::SetUnits(Units::Metric)]);
    assert_eq!(metric.bed(CORN), layout.bed(CORN));
}

#[test]
fn files_without_the_units_are_read_as_before() {
    let layout = file::read(WITHOUT_UNITS).expect("a layout");
    let bed = layout.bed(CORN).expect("the corn");
    let paper = bed.feeding.laboratory.expect("a paper");
    assert_eq!(paper.typed_in, NutrientUnits::default());
    assert_eq!(paper.lime.expect("lime").typed_in, None);
    assert!(bed.dressings.iter().all(|dressing| dressing.typed_in.is_none()));
    assert_eq!(file::write(&layout), WITHOUT_UNITS);
}

#[test]
fn a_unit_that_is_none_is_refused_at_its_place() {
    let text = file::write(&typed());
    for wrong in ["bushel/acre", "lb", ""] {
        let text = text.replacen("typed_in: \"oz/10 ft\"", &format!("typed_in: \"{wrong}\""), 1);
        let error = file::read(&text).expect_err(wrong);
        let said = error.to_string().to_lowercase();
        assert!(said.contains("this unit is none of a weight over ground"), "{said}");
        let place = error.place().expect("a place");
        let line = text.lines().nth(place.line - 1).unwrap_or_default();
        assert!(line.contains("typed_in"), "{line}");
    }
}
