//! Published corrections for the back of the cornea.

constants! {
    /// Steep at least so far from the horizontal is with the rule.
    WITH_FROM "with the rule from" "deg" = 60, Eom2015 Read;
    /// Steep at most so far from the horizontal is against the rule.
    AGAINST_TO "against the rule up to" "deg" = 30, Eom2015 Read;
    /// Intercept along 0 and 90.
    REGRESSION_X "regression of 2016, x" "D" = 0.508, Regression2016 Memory;
    /// Slope along 0 and 90.
    REGRESSION_XX "regression of 2016, x per x" "1" = 0.926, Regression2016 Memory;
    /// Intercept along 45 and 135.
    REGRESSION_Y "regression of 2016, y" "D" = 0.009, Regression2016 Memory;
    /// Slope along 45 and 135.
    REGRESSION_YY "regression of 2016, y per y" "1" = 0.932, Regression2016 Memory;
    /// Per dioptre, with the rule.
    EOM_WITH_PER_D "Eom, with the rule, per D" "1" = 0.15, Eom2015 Two;
    /// With the rule.
    EOM_WITH "Eom, with the rule" "D" = 0.22, Eom2015 Two;
    /// Per dioptre, oblique.
    EOM_OBLIQUE_PER_D "Eom, oblique, per D" "1" = 0.05, Eom2015 Two;
    /// Oblique.
    EOM_OBLIQUE "Eom, oblique" "D" = 0.27, Eom2015 Two;
    /// Against the rule.
    EOM_AGAINST "Eom, against the rule" "D" = 0.27, Eom2015 Two;
    /// With the rule.
    GOGGIN_WITH "Goggin, with the rule" "1" = 0.75, Goggin2015 Read;
    /// Against the rule.
    GOGGIN_AGAINST "Goggin, against the rule" "1" = 1.41, Goggin2015 Read;
    /// Lens cylinder up to which that was published.
    GOGGIN_UP_TO "Goggin, lens cylinder up to" "D" = 2.0, Goggin2015 Read;
}
