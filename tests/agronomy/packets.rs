//! Packets: the cheapest choice, against trying them all.

use proptest::prelude::*;
use quillet::agronomy::{PacketSize, Unworkable, choose_packets};

use crate::near;

fn sizes(of: &[(f64, Option<f64>)]) -> Vec<PacketSize> {
    of.iter().map(|&(amount, price)| PacketSize { amount, price }).collect()
}

#[test]
fn worked_examples() {
    // By hand: 900 seeds from packets of 100 at 3, 250 at 5 and 1,000 at 17. Four of 250 cost 20, one of 1,000 costs 17.
    let list = sizes(&[(100.0, Some(3.0)), (250.0, Some(5.0)), (1000.0, Some(17.0))]);
    let choice = choose_packets(900.0, &list).expect("there are packets");
    assert_eq!(
        (choice.counts.as_slice(), choice.cost, choice.proven),
        (&[0, 0, 1][..], Some(17.0), true)
    );
    // 600: two of 250 and one of 100 cost 13; three of 250 cost 15.
    let choice = choose_packets(600.0, &list).expect("there are packets");
    assert_eq!((choice.counts.as_slice(), choice.cost), (&[1, 2, 0][..], Some(13.0)));
    assert!(choice.proven);
    // Without prices the fewest left over: 610 is 4 × 100 + 250 with 40 over, and nothing leaves less.
    let list = sizes(&[(100.0, None), (250.0, None), (1000.0, None)]);
    let choice = choose_packets(610.0, &list).expect("there are packets");
    assert_eq!(
        (choice.counts.as_slice(), choice.cost, choice.proven),
        (&[4, 1, 0][..], None, true)
    );
    // A need of nothing takes none.
    let choice = choose_packets(0.0, &list).expect("there are packets");
    assert_eq!((choice.counts.as_slice(), choice.amount), (&[0, 0, 0][..], 0.0));
}

#[test]
fn sizes_without_a_price_are_left_out_where_others_have_one() {
    // 100 seeds from packets of 100 at 3 and 250 at 5; what 60 cost nobody said.
    let list = sizes(&[(100.0, Some(3.0)), (60.0, None), (250.0, Some(5.0))]);
    let choice = choose_packets(350.0, &list).expect("there are packets");
    assert_eq!((choice.counts.as_slice(), choice.cost), (&[1, 0, 1][..], Some(8.0)));
    assert_eq!((choice.unpriced_sizes, choice.proven), (1, true));
}

#[test]
fn ties_go_to_less_left_over_and_then_to_fewer_packets() {
    // 200 at 4: two of 100 at 2 hold 200, one of 300 at 4 holds 300 for the same money.
    let choice = choose_packets(200.0, &sizes(&[(300.0, Some(4.0)), (100.0, Some(2.0))])).expect("there are packets");
    assert_eq!((choice.counts.as_slice(), choice.proven), (&[0, 2][..], true));
    // The same money and the same seeds: one packet and not two.
    for list in [
        [(100.0, Some(2.0)), (200.0, Some(4.0))],
        [(200.0, Some(4.0)), (100.0, Some(2.0))],
    ] {
        let choice = choose_packets(200.0, &sizes(&list)).expect("there are packets");
        assert_eq!(choice.counts.iter().sum::<u64>(), 1, "{list:?}");
    }
}

#[test]
fn ounces_that_binary_splits_badly_still_cover_to_the_last_one() {
    // 0.3 oz is three of 0.1 oz, never four.
    let list = sizes(&[(0.1, Some(2.0)), (1.0, Some(18.0))]);
    let choice = choose_packets(0.1 + 0.2, &list).expect("there are packets");
    assert_eq!(choice.counts, [3, 0]);
}

#[test]
fn what_is_no_packet_is_refused() {
    assert_eq!(choose_packets(5.0, &[]), Err(Unworkable::NoPacket));
    assert!(choose_packets(5.0, &sizes(&[(0.0, None)])).is_err());
    assert!(choose_packets(5.0, &sizes(&[(1.0, Some(-1.0))])).is_err());
    assert!(choose_packets(f64::NAN, &sizes(&[(1.0, None)])).is_err());
    assert!(choose_packets(1e15, &sizes(&[(1.0, None)])).is_err());
    assert!(choose_packets(5.0, &sizes(&[(1.0, None); 13])).is_err());
}

/// The least cost of all choices, by the plain recursion over what is still needed.
fn least(need: usize, list: &[(usize, u32)]) -> u32 {
    let mut cost = vec![0u32; need + 1];
    for left in 1..=need {
        cost[left] = list
            .iter()
            .map(|&(amount, price)| price + cost[left.saturating_sub(amount)])
            .min()
            .unwrap_or(0);
    }
    cost[need]
}

proptest! {
    #[test]
    fn no_choice_is_cheaper(need in 0_usize..3000, list in prop::collection::vec((1_usize..400, 0_u32..60), 1..6)) {
        let sizes: Vec<PacketSize> = list
            .iter()
            .map(|&(amount, price)| PacketSize { amount: amount as f64, price: Some(f64::from(price)) })
            .collect();
        let choice = choose_packets(need as f64, &sizes).expect("there are packets");
        prop_assert!(choice.amount >= need as f64);
        if choice.proven {
            near(choice.cost.unwrap_or(f64::NAN), f64::from(least(need, &list)), 1e-6);
        }
    }

    #[test]
    fn no_choice_leaves_fewer_over(need in 0_usize..2000, list in prop::collection::vec(1_usize..300, 1..5)) {
        let sizes: Vec<PacketSize> = list.iter().map(|&amount| PacketSize { amount: amount as f64, price: None }).collect();
        let choice = choose_packets(need as f64, &sizes).expect("there are packets");
        let reachable: Vec<(usize, u32)> = list.iter().map(|&amount| (amount, amount as u32)).collect();
        prop_assert!(choice.amount >= need as f64);
        if choice.proven {
            near(choice.amount, f64::from(least(need, &reachable)), 1e-6);
        }
    }
}
