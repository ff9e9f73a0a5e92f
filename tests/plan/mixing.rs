//! Mixing for a bed: the cheapest mix of what is in the shed, or which limit is in the way; and own materials in
//! dressings and in what is bought.

use quillet::catalog::{Analysis, MaterialId};
use quillet::layout::{Amount, Basis, BedChange, Dressing, DressingId, Edit, Label, Layout, Placement, ShedEdit, When};
use quillet::plan::feeding::{
    MaterialBook, MixAsked, MixBlend, MixFound, NutrientRates, mix_for, mixed_dressings, restricted_nitrogen,
};
use quillet::quantity::{Area, Mass, MassPerArea, Units};

use super::{bed, bed_id, close, plan, rectangle};

fn id(material: &str) -> MaterialId {
    MaterialId(material.to_owned())
}

/// A bag of 50 lb at a price.
fn bag(price: f64) -> Label {
    Label {
        bag: Some(Mass::pounds(50.0)),
        price: Some(price),
        ..Label::default()
    }
}

fn with(layout: &Layout, edit: ShedEdit) -> Layout {
    layout.apply(&Edit::Shed(edit)).unwrap()
}

/// A 15-0-0 of the grower's own at 6 a bag, and urea (46-0-0) at 23: 0.80 and 1.00 for a pound of nitrogen.
fn two_in_the_shed() -> Layout {
    let own = Label {
        name: "Blue pellets".to_owned(),
        analysis: Analysis::percent(15.0, 0.0, 0.0),
        ..bag(6.0)
    };
    let layout = with(&rectangle(30.0, 35.0), ShedEdit::AddOwn(own));
    with(&layout, ShedEdit::Put(id("urea"), bag(23.0)))
}

/// A pound of nitrogen for 1,000 sq ft, and nothing else.
fn a_pound_of_nitrogen(materials: &[&str]) -> MixAsked {
    MixAsked {
        materials: materials.iter().map(|material| id(material)).collect(),
        least: NutrientRates {
            n: MassPerArea::pounds_per_1000_square_feet(1.0),
            ..NutrientRates::default()
        },
        most: [None; 3],
        ground: Area::square_feet(1000.0),
        only_at_hand: false,
        organic_requirement: None,
        restricted_given: MassPerArea::ZERO,
        taken: std::collections::BTreeMap::new(),
    }
}

/// A hundred pounds of nitrogen on an acre, within organic rules.
fn organic(materials: &[&str]) -> MixAsked {
    let n = MassPerArea::pounds_per_acre(100.0);
    MixAsked {
        least: NutrientRates {
            n,
            ..NutrientRates::default()
        },
        ground: Area::acres(1.0),
        organic_requirement: Some(n),
        ..a_pound_of_nitrogen(materials)
    }
}

fn found(layout: &Layout, asked: &MixAsked) -> MixFound {
    mix_for(asked, &MaterialBook::of(layout), Units::Customary).unwrap()
}

#[track_caller]
fn met(layout: &Layout, asked: &MixAsked) -> MixBlend {
    match found(layout, asked) {
        MixFound::Met(blend) => blend,
        MixFound::Unmet { in_the_way, .. } => panic!("in the way: {in_the_way:?}"),
    }
}

#[track_caller]
fn unmet(layout: &Layout, asked: &MixAsked) -> (MixBlend, MixBlend, Vec<String>) {
    match found(layout, asked) {
        MixFound::Met(blend) => panic!("met by {:?}", blend.lines),
        MixFound::Unmet {
            least_short,
            never_over,
            in_the_way,
        } => (least_short, never_over, in_the_way),
    }
}

fn pounds(blend: &MixBlend, material: &str) -> f64 {
    let line = blend.lines.iter().find(|line| line.material.0 == material);
    line.map_or(0.0, |line| line.total.to_pounds())
}

/// Mortvedt (2001), Calculating Salt Index, as listed on a page crediting it: urea 74.4, potassium chloride 116.2. A
/// pound of nitrogen takes 1 ÷ 0.46 lb of urea, a pound of potash 1 ÷ 0.6 lb or so of the chloride: weighed by weight.
#[test]
fn a_mix_is_as_salty_as_its_parts_by_weight() {
    let asked = |materials: &[&str]| {
        let mut asked = a_pound_of_nitrogen(materials);
        asked.least.k2o = MassPerArea::pounds_per_1000_square_feet(1.0);
        asked
    };
    let layout = two_in_the_shed();
    let blend = met(&layout, &asked(&["urea", "potassium_chloride"]));
    let (urea, chloride) = (pounds(&blend, "urea"), pounds(&blend, "potassium_chloride"));
    assert!(urea > 2.0 && chloride > 1.0);
    let index = (urea * 74.4 + chloride * 116.2) / (urea + chloride);
    close(blend.salt_index.unwrap(), index, 1e-6);
    // Where nothing is known of a part, nothing is said of the whole.
    let unknown = met(&layout, &asked(&["own_blue_pellets", "potassium_chloride"]));
    assert_eq!(unknown.salt_index, None);
}

#[test]
fn the_cheapest_mix_takes_the_cheapest_nitrogen() {
    let blend = met(&two_in_the_shed(), &a_pound_of_nitrogen(&["urea", "own_blue_pellets"]));
    assert_eq!(blend.lines.len(), 1);
    // 1 ÷ 0.15, at 6 for 50 lb.
    close(pounds(&blend, "own_blue_pellets"), 1.0 / 0.15, 1e-6);
    close(blend.cost.unwrap(), 0.80, 1e-6);
    close(blend.lines[0].cost.unwrap(), 0.80, 1e-6);
    assert!(blend.unpriced.is_empty() && blend.misses.is_empty() && blend.beyond.is_empty());
}

#[test]
fn a_mix_says_what_its_whole_bags_cost() {
    let layout = two_in_the_shed();
    let mut asked = a_pound_of_nitrogen(&["own_blue_pellets"]);
    let line = |layout: &Layout, asked: &MixAsked| met(layout, asked).lines.remove(0);
    // 6.67 lb out of a new bag of 50 lb at 6; arithmetic.
    let of_mix = line(&layout, &asked);
    assert_eq!((of_mix.bags, of_mix.bags_cost), (Some(1), Some(6.0)));
    // What other dressings take of the first bag leaves enough in it, or not.
    asked.taken = [(id("own_blue_pellets"), Mass::pounds(40.0))].into();
    assert_eq!(line(&layout, &asked).bags, Some(0));
    asked.taken = [(id("own_blue_pellets"), Mass::pounds(45.0))].into();
    assert_eq!(line(&layout, &asked).bags, Some(1));
    asked.taken = [(id("own_blue_pellets"), Mass::pounds(100.0))].into();
    assert_eq!(line(&layout, &asked).bags, Some(1));
    // Of what has no bag nothing is said.
    assert_eq!(line(&layout, &a_pound_of_nitrogen(&["mixed_10_10_10"])).bags, None);
}

#[test]
fn without_a_price_it_is_the_lightest_and_says_of_what() {
    let layout = with(
        &two_in_the_shed(),
        ShedEdit::Set(
            two_in_the_shed().shed_material(&id("urea")).unwrap().id,
            Label::default(),
        ),
    );
    let blend = met(&layout, &a_pound_of_nitrogen(&["urea", "own_blue_pellets"]));
    close(pounds(&blend, "urea"), 1.0 / 0.46, 1e-6);
    assert_eq!(blend.cost, None);
    assert_eq!(blend.lines[0].cost, None);
    assert_eq!(blend.unpriced, ["Urea, granular"]);
}

#[test]
fn what_it_brings_beyond_is_always_listed() {
    let blend = met(&two_in_the_shed(), &a_pound_of_nitrogen(&["mixed_10_10_10"]));
    close(pounds(&blend, "mixed_10_10_10"), 10.0, 1e-6);
    // A pound on 1,000 sq ft is 43.56 lb on an acre.
    assert_eq!(
        blend.beyond,
        [
            "phosphate: 43.6 lb/acre, of which none is wanted, 1.00 lb on the bed",
            "potash: 43.6 lb/acre, of which none is wanted, 1.00 lb on the bed"
        ]
    );
}

#[test]
fn an_unmet_mix_names_the_limits_and_the_two_nearest() {
    let mut asked = a_pound_of_nitrogen(&["mixed_10_10_10"]);
    asked.most[1] = Some(MassPerArea::pounds_per_1000_square_feet(0.5));
    let (least_short, never_over, in_the_way) = unmet(&two_in_the_shed(), &asked);
    assert_eq!(in_the_way, ["the most of phosphate"]);
    close(pounds(&least_short, "mixed_10_10_10"), 10.0, 1e-4);
    assert_eq!(least_short.misses, ["phosphate is 0.50 lb over the limit"]);
    close(pounds(&never_over, "mixed_10_10_10"), 5.0, 1e-4);
    assert_eq!(never_over.misses, ["nitrogen is 0.50 lb short"]);
}

#[test]
fn with_nothing_at_hand_that_is_what_is_in_the_way() {
    let mut asked = a_pound_of_nitrogen(&["urea"]);
    asked.only_at_hand = true;
    let (least_short, _, in_the_way) = unmet(&two_in_the_shed(), &asked);
    assert_eq!(in_the_way, ["what is at hand of Urea, granular"]);
    assert!(least_short.lines.is_empty());
    let three_pounds = Label {
        at_hand: Some(Mass::pounds(3.0)),
        ..bag(23.0)
    };
    let layout = two_in_the_shed();
    let urea = layout.shed_material(&id("urea")).unwrap().id;
    let layout = with(&layout, ShedEdit::Set(urea, three_pounds));
    close(pounds(&met(&layout, &asked), "urea"), 1.0 / 0.46, 1e-6);
}

#[test]
fn organic_rules_hold_sodium_nitrate_to_a_fifth_of_the_crops_nitrogen() {
    // 7 CFR 205.602(h): no more than 20 % of the crop's total nitrogen requirement, so 20 lb of 100 lb. Nine in a hundred
    // of blood meal's weight is nitrogen of this season: 12 % × 0.75 (Pacific Northwest Extension PNW 646, from memory).
    let layout = with(&two_in_the_shed(), ShedEdit::Put(id("sodium_nitrate_15"), bag(10.0)));
    let layout = with(&layout, ShedEdit::Put(id("sodium_nitrate_16"), bag(11.0)));
    let layout = with(&layout, ShedEdit::Put(id("blood_meal"), bag(60.0)));
    let asked = organic(&["sodium_nitrate_15", "blood_meal"]);
    let blend = met(&layout, &asked);
    close(pounds(&blend, "sodium_nitrate_15"), 20.0 / 0.15, 1e-3);
    close(pounds(&blend, "blood_meal"), 80.0 / 0.09, 1e-3);

    let free = MixAsked {
        organic_requirement: None,
        ..asked.clone()
    };
    close(pounds(&met(&layout, &free), "sodium_nitrate_15"), 100.0 / 0.15, 1e-3);

    let given = MixAsked {
        restricted_given: MassPerArea::pounds_per_acre(15.0),
        ..asked
    };
    close(pounds(&met(&layout, &given), "sodium_nitrate_15"), 5.0 / 0.15, 1e-3);

    let both = organic(&["sodium_nitrate_15", "sodium_nitrate_16", "blood_meal"]);
    let blend = met(&layout, &both);
    let of_nitrate = pounds(&blend, "sodium_nitrate_15") * 0.15 + pounds(&blend, "sodium_nitrate_16") * 0.16;
    close(of_nitrate, 20.0, 1e-3);

    let (_, never_over, in_the_way) = unmet(&layout, &organic(&["sodium_nitrate_15"]));
    assert_eq!(
        in_the_way,
        ["the fifth of the nitrogen that organic rules allow of sodium nitrate"]
    );
    close(pounds(&never_over, "sodium_nitrate_15"), 20.0 / 0.15, 1e-3);
}

#[test]
fn what_cannot_be_mixed_is_said_in_a_sentence() {
    let layout = two_in_the_shed();
    let book = MaterialBook::of(&layout);
    let wrong = |asked: &MixAsked| mix_for(asked, &book, Units::Customary).unwrap_err();
    assert!(wrong(&a_pound_of_nitrogen(&[])).contains("Choose what to mix from"));
    let mut asked = a_pound_of_nitrogen(&["urea"]);
    asked.ground = Area::ZERO;
    assert!(wrong(&asked).contains("no ground"));
    let mut asked = a_pound_of_nitrogen(&["urea"]);
    asked.least = NutrientRates::default();
    assert!(wrong(&asked).contains("Nothing is wanted"));
    let mut asked = a_pound_of_nitrogen(&["urea"]);
    asked.most[0] = Some(MassPerArea::pounds_per_1000_square_feet(0.5));
    assert!(wrong(&asked).contains("of nitrogen is asked for and no more than"));
}

#[test]
fn a_mix_laid_down_brings_what_it_said() {
    let layout = two_in_the_shed();
    let bed_plan = plan(&layout);
    let mut asked = a_pound_of_nitrogen(&["urea", "mixed_10_10_10"]);
    asked.least.p2o5 = MassPerArea::pounds_per_1000_square_feet(0.4);
    asked.ground = bed(&bed_plan).area;
    let blend = met(&layout, &asked);
    assert_eq!(blend.lines.len(), 2);
    let when = When::Unsaid;
    let down = BedChange::LayDown {
        name: "a mix".to_owned(),
        dressings: mixed_dressings(&blend, "Mix", Placement::Broadcast, &when),
        in_place: false,
    };
    let laid = layout.apply(&Edit::Bed(bed_id(&layout), down)).unwrap();
    let after = plan(&laid);
    assert_eq!(bed(&after).dressings.len(), 2);
    for (dressing, line) in bed(&after).dressings.iter().zip(&blend.lines) {
        assert_eq!(dressing.material, line.material);
        close(dressing.total.to_pounds(), line.total.to_pounds(), 1e-6);
    }
    let brings = bed(&after).feeding.accounts[1].ahead;
    close(brings.to_pounds_per_1000_square_feet(), 0.4, 1e-6);
    assert_eq!(
        restricted_nitrogen(&laid.beds[0], bed(&after), &MaterialBook::of(&laid)).0,
        MassPerArea::ZERO
    );
}

#[test]
fn an_own_material_in_a_dressing_reaches_what_is_bought_in_bags() {
    let layout = two_in_the_shed();
    let dressing = Dressing {
        id: DressingId(0),
        name: "Before planting".to_owned(),
        material: id("own_blue_pellets"),
        basis: Basis::Nitrogen,
        amount: Amount::PerArea(MassPerArea::pounds_per_1000_square_feet(15.0)),
        typed_in: None,
        placement: Placement::Broadcast,
        when: When::Unsaid,
        used: Vec::new(),
    };
    let change = Edit::Bed(bed_id(&layout), BedChange::AddDressing(dressing));
    let layout = layout.apply(&change).unwrap();
    let plan = plan(&layout);
    let line = &plan.shopping.lines[0];
    // 15 lb of nitrogen is 100 lb of a 15-0-0, on 1,050 sq ft 105 lb: three bags of 50 lb, 45 lb left over.
    assert_eq!(line.name, "Blue pellets");
    close(line.need.to_pounds(), 105.0, 1e-6);
    assert_eq!(line.bags, Some(3));
    close(line.cost.unwrap(), 18.0, 1e-9);
    close(line.left_over.unwrap().to_pounds(), 45.0, 1e-6);
    let own = layout.shed_material(&id("own_blue_pellets")).unwrap().id;
    let refused = layout.apply(&Edit::Shed(ShedEdit::Remove(own))).unwrap_err();
    assert!(refused.to_string().contains("still named by"));
}

#[test]
fn what_is_missing_altogether_is_named() {
    let layout = two_in_the_shed();
    let mut asked = a_pound_of_nitrogen(&["urea"]);
    asked.least.p2o5 = MassPerArea::pounds_per_1000_square_feet(0.5);
    let (_, _, in_the_way) = unmet(&layout, &asked);
    assert_eq!(in_the_way, ["that none of these brings phosphate"]);
    // There is too little of the nitrogen and of the phosphate: more of one of them alone would not do.
    let little = Label {
        at_hand: Some(Mass::pounds(0.5)),
        ..bag(6.0)
    };
    let layout = with(&rectangle(30.0, 35.0), ShedEdit::Put(id("urea"), little.clone()));
    let layout = with(&layout, ShedEdit::Put(id("triple_superphosphate"), little));
    let mut asked = a_pound_of_nitrogen(&["urea", "triple_superphosphate"]);
    asked.least.p2o5 = MassPerArea::pounds_per_1000_square_feet(1.0);
    asked.only_at_hand = true;
    let (_, _, in_the_way) = unmet(&layout, &asked);
    assert_eq!(in_the_way, ["that too little of these is at hand: buy more"]);
}

#[test]
fn no_bag_is_spent_twice() {
    let label = Label {
        at_hand: Some(Mass::pounds(10.0)),
        ..bag(6.0)
    };
    let layout = with(&rectangle(30.0, 35.0), ShedEdit::Put(id("urea"), label));
    let mut asked = a_pound_of_nitrogen(&["urea"]);
    asked.only_at_hand = true;
    close(pounds(&met(&layout, &asked), "urea"), 1.0 / 0.46, 1e-6);
    asked.taken.insert(id("urea"), Mass::pounds(9.0));
    let (_, never_over, _) = unmet(&layout, &asked);
    close(pounds(&never_over, "urea"), 1.0, 1e-6);
}
