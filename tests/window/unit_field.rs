//! The field for quantities, alone: each trap that such fields are known for.

use egui::{Id, Key, Modifiers};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use quillet::app::unit_field::unit_field;
use quillet::quantity::{Length, Units};

/// A value, a second field to go to, and what came of the first.
struct Form {
    value: Length,
    accepted: Vec<Length>,
    wrong: Option<String>,
}

fn form() -> Harness<'static, Form> {
    let state = Form {
        value: Length::feet(3.0),
        accepted: Vec::new(),
        wrong: None,
    };
    let draw = |ui: &mut egui::Ui, form: &mut Form| {
        let shown = form.value.show_short(Units::Customary);
        let read = |text: &str| Length::parse(text, Units::Customary).map_err(|error| error.to_string());
        let reply = unit_field(ui, Id::unique("first"), &shown, 120.0, read);
        reply.response.accessible_name("First");
        form.wrong = reply.wrong;
        if let Some(value) = reply.accepted {
            form.accepted.push(value);
            form.value = value;
        }
        let other = unit_field(ui, Id::unique("second"), "1 ft", 120.0, read);
        other.response.accessible_name("Second");
    };
    let mut harness = Harness::builder()
        .with_size([300.0, 200.0])
        .with_context_setup(quillet::app::theme::install)
        .build_ui_state(draw, state);
    harness.run();
    harness
}

fn write(harness: &mut Harness<'_, Form>, text: &str) {
    harness.get_by_label("First").click();
    harness.run();
    harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
    harness.run();
    harness.event(egui::Event::Text(text.to_owned()));
    harness.run();
}

fn press(harness: &mut Harness<'_, Form>, key: Key) {
    harness.key_press(key);
    harness.run();
}

fn shown(harness: &Harness<'_, Form>) -> String {
    harness.get_by_label("First").value().unwrap_or_default()
}

#[track_caller]
fn check_accepted_once(harness: &mut Harness<'_, Form>, inches: f64) {
    harness.run_steps(4);
    let accepted = &harness.state().accepted;
    assert_eq!(accepted.len(), 1, "{accepted:?}");
    assert!((accepted[0].to_inches() - inches).abs() < 1e-9, "{accepted:?}");
}

#[test]
fn enter_takes_the_value_over_once_and_shows_it_in_the_growers_way() {
    let mut harness = form();
    write(&mut harness, "3'6\"");
    assert!(
        harness.state().accepted.is_empty(),
        "nothing is taken over while typing"
    );
    press(&mut harness, Key::Enter);
    check_accepted_once(&mut harness, 42.0);
    assert_eq!(shown(&harness), "42 in");
}

#[test]
fn tab_takes_the_value_over() {
    let mut harness = form();
    write(&mut harness, "30 in");
    press(&mut harness, Key::Tab);
    check_accepted_once(&mut harness, 30.0);
    assert!(harness.get_by_label("Second").is_focused());
}

#[test]
fn clicking_elsewhere_takes_the_value_over() {
    let mut harness = form();
    write(&mut harness, "30 in");
    harness.get_by_label("Second").click();
    harness.run();
    check_accepted_once(&mut harness, 30.0);
}

#[test]
fn clicking_on_nothing_takes_the_value_over() {
    let mut harness = form();
    write(&mut harness, "30 in");
    let nothing = egui::pos2(280.0, 190.0);
    harness.drag_at(nothing);
    harness.run();
    harness.drop_at(nothing);
    harness.run();
    check_accepted_once(&mut harness, 30.0);
}

#[test]
fn escape_brings_the_old_value_back() {
    let mut harness = form();
    write(&mut harness, "30 in");
    press(&mut harness, Key::Escape);
    harness.run_steps(4);
    assert!(harness.state().accepted.is_empty());
    assert_eq!(shown(&harness), "3 ft");
}

#[test]
fn what_cannot_be_read_stays_and_the_field_says_what_would_do() {
    let mut harness = form();
    write(&mut harness, "three feet ish");
    press(&mut harness, Key::Enter);
    harness.run_steps(4);
    assert!(harness.state().accepted.is_empty());
    assert_eq!(shown(&harness), "three feet ish");
    let wrong = harness.state().wrong.clone().expect("it says why");
    assert!(wrong.contains("3'6\""), "{wrong}");
    // Put right, it is taken over.
    write(&mut harness, "30 in");
    assert!(harness.state().wrong.is_none());
    press(&mut harness, Key::Enter);
    check_accepted_once(&mut harness, 30.0);
}

#[test]
fn escape_in_a_marked_field_brings_the_value_back() {
    let mut harness = form();
    write(&mut harness, "nonsense");
    press(&mut harness, Key::Enter);
    harness.get_by_label("First").click();
    harness.run();
    press(&mut harness, Key::Escape);
    harness.run_steps(2);
    assert_eq!(shown(&harness), "3 ft");
    assert!(harness.state().wrong.is_none());
}

#[test]
fn an_unchanged_text_is_no_value() {
    let mut harness = form();
    harness.get_by_label("First").click();
    harness.run();
    press(&mut harness, Key::Enter);
    harness.run_steps(4);
    assert!(harness.state().accepted.is_empty());
}

#[test]
fn a_change_from_outside_shows_at_once_when_nobody_types() {
    let mut harness = form();
    harness.state_mut().value = Length::inches(18.0);
    harness.run();
    assert_eq!(shown(&harness), "18 in");
}

#[test]
fn a_change_from_outside_is_not_written_over_by_a_stale_text() {
    let mut harness = form();
    harness.get_by_label("First").click();
    harness.run();
    harness.state_mut().value = Length::inches(18.0);
    harness.run();
    press(&mut harness, Key::Tab);
    harness.run_steps(4);
    assert!(harness.state().accepted.is_empty());
    assert_eq!(shown(&harness), "18 in");
    // A text that could not be read gives way to a change from outside, too.
    write(&mut harness, "nonsense");
    press(&mut harness, Key::Enter);
    harness.state_mut().value = Length::inches(20.0);
    harness.run();
    assert_eq!(shown(&harness), "20 in");
    assert!(harness.state().wrong.is_none());
}
