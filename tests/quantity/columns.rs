//! Columns of amounts in whole steps.

use quillet::quantity::{Length, Mass, Shown, ShownUnit, Volume};

use crate::close;

#[test]
fn steps_are_written_with_the_decimals_of_their_column() {
    let pounds = Shown::new(ShownUnit::Pounds, 2);
    for (steps, shown) in [
        (123_456, "1,234.56"),
        (5, "0.05"),
        (0, "0.00"),
        (-250, "−2.50"),
        (i64::MIN, "−92,233,720,368,547,758.08"),
    ] {
        assert_eq!(pounds.format(steps), shown);
    }
    assert_eq!(pounds.format_with_unit(650), "6.50 lb");
    assert_eq!(Shown::new(ShownUnit::Feet, 0).format_with_unit(1440), "1,440 ft");
    assert_eq!(Shown::new(ShownUnit::Count, 3).format_with_unit(20_328), "20,328");
}

#[test]
fn amounts_become_steps_of_their_own_unit_only() {
    let ounces = Shown::new(ShownUnit::Ounces, 1);
    assert!(ounces.steps(Mass::pounds(2.0)).is_some_and(|steps| close(steps, 320.0)));
    assert_eq!(ounces.steps(Length::feet(1.0)), None);
    assert!(
        Shown::new(ShownUnit::Feet, 2)
            .steps(Length::metres(30.48))
            .is_some_and(|steps| close(steps, 10_000.0))
    );
    assert!(
        Shown::new(ShownUnit::Cups, 1)
            .steps(Volume::gallons(1.0))
            .is_some_and(|steps| close(steps, 160.0))
    );
    assert!(close(ounces.step(), 0.1));
    assert_eq!(Shown::new(ShownUnit::Grams, 9).decimals(), 6);
    assert_eq!(Shown::new(ShownUnit::Kilograms, 3).steps_per_unit(), 1000);
}
