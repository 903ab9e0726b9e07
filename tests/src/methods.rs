//! What the methods say of an eye, asked without a card.

use ocellus_card::case::Case;
use ocellus_card::caution::Caution;
use ocellus_card::draft::Draft;
use ocellus_card::parts::lens::Answer;

/// The answer of each method that has one, and what is against them, or against there being more.
pub fn answers(draft: &Draft) -> (Vec<Answer>, Vec<Caution>) {
    let case = Case::try_from(draft).unwrap_or_else(|error| panic!("{error:?}"));
    case.known(|known| {
        let (lens, mut cautions) = (known.lens.expect("the case of an eye"), Vec::new());
        lens.answers().report(lens.eye, &mut |caution| cautions.push(caution));
        (lens.answers().all().copied().collect(), cautions)
    })
}
