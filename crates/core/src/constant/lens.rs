//! What the lens-power methods carry in their equations.

constants! {
    /// SRK II: a(AL < 20).
    SRK2_BELOW_20 "SRK II step, AL < 20" "D" = 3, SrkII1988 Memory;
    /// SRK II: a(20 <= AL < 21).
    SRK2_BELOW_21 "SRK II step, AL < 21" "D" = 2, SrkII1988 Memory;
    /// SRK II: a(21 <= AL < 22).
    SRK2_BELOW_22 "SRK II step, AL < 22" "D" = 1, SrkII1988 Memory;
    /// SRK II: a(AL >= 24.5).
    SRK2_LONG "SRK II step, AL >= 24.5" "D" = -0.5, SrkII1988 Memory;
    /// SRK II: first edge.
    SRK2_EDGE_20 "SRK II edge 1" "mm" = 20, SrkII1988 Memory;
    /// SRK II: second edge.
    SRK2_EDGE_21 "SRK II edge 2" "mm" = 21, SrkII1988 Memory;
    /// SRK II: third edge.
    SRK2_EDGE_22 "SRK II edge 3" "mm" = 22, SrkII1988 Memory;
    /// SRK II: last edge.
    SRK2_EDGE_LONG "SRK II edge 4" "mm" = 24.5, SrkII1988 Memory;
    /// SRK II: slope on K.
    SRK2_K "SRK II slope on K" "1" = 0.9, SrkII1988 Read;
    /// SRK II: slope on AL.
    SRK2_AL "SRK II slope on AL" "D/mm" = 2.5, SrkII1988 Read;
    /// SRK II: emmetropic power at which CR changes.
    SRK2_CR_EDGE "SRK II edge of CR" "D" = 14, SrkII1988 Memory;
    /// SRK II: lens dioptres per dioptre of refraction above it.
    SRK2_CR_HIGH "SRK II CR above 14 D" "1" = 1.25, SrkII1988 Memory;
    /// SRK II: and at or below it.
    SRK2_CR_LOW "SRK II CR to 14 D" "1" = 1.00, SrkII1988 Memory;

    /// SRK/T: LCOR = c0 + c1 AL + c2 AL^2 for AL above the edge.
    SRKT_LCOR_0 "SRK/T c0" "mm" = -3.446, SrkT1990 Memory;
    /// SRK/T: c1.
    SRKT_LCOR_1 "SRK/T c1" "1" = 1.716, SrkT1990 Memory;
    /// SRK/T: c2.
    SRKT_LCOR_2 "SRK/T c2" "1/mm" = -0.0237, SrkT1990 Memory;
    /// SRK/T: where the correction of long eyes begins.
    SRKT_LCOR_EDGE "SRK/T long edge" "mm" = 24.2, SrkT1990 Memory;
    /// SRK/T: corneal width, constant.
    SRKT_CW_0 "SRK/T Cw constant" "mm" = -5.41, SrkT1990 Memory;
    /// SRK/T: corneal width, slope on LCOR.
    SRKT_CW_1 "SRK/T Cw slope on LCOR" "1" = 0.58412, SrkT1990 Memory;
    /// SRK/T: corneal width, slope on K.
    SRKT_CW_2 "SRK/T Cw slope on K" "mm/D" = 0.098, SrkT1990 Memory;
    /// SRK/T: ACD constant from A, slope.
    ACD_CONST_SLOPE "ACDconst slope on A" "mm/D" = 0.62467, SrkT1990 Two;
    /// SRK/T: ACD constant from A, constant.
    ACD_CONST_0 "ACDconst constant" "mm" = -68.747, SrkT1990 Two;
    /// SRK/T: offset = ACDconst - this.
    SRKT_OFFSET "SRK/T offset" "mm" = 3.336, SrkT1990 Memory;
    /// SRK/T: retinal thickness, constant.
    SRKT_RT_0 "SRK/T retinal thickness constant" "mm" = 0.65696, SrkT1990 Memory;
    /// SRK/T: retinal thickness, slope on AL.
    SRKT_RT_1 "SRK/T retinal thickness slope" "1" = -0.02029, SrkT1990 Memory;

    /// T2: H2, constant.
    T2_H_0 "T2 H2 constant" "mm" = -10.326, T22010 Memory;
    /// T2: H2, slope on AL.
    T2_H_AL "T2 H2 slope on AL" "1" = 0.32630, T22010 Memory;
    /// T2: H2, slope on K.
    T2_H_K "T2 H2 slope on K" "mm/D" = 0.13533, T22010 Memory;

    /// Holladay 1: least radius.
    HOLLADAY_R_MIN "Holladay 1 least Rag" "mm" = 7, Holladay1988 Memory;
    /// Holladay 1: mean anterior-chamber diameter.
    HOLLADAY_AG "Holladay 1 AG" "mm" = 12.5, Holladay1988 Memory;
    /// Holladay 1: mean axial length.
    HOLLADAY_AL "Holladay 1 mean AL" "mm" = 23.45, Holladay1988 Memory;
    /// Holladay 1: largest anterior-chamber diameter.
    HOLLADAY_AG_MAX "Holladay 1 largest AG" "mm" = 13.5, Holladay1988 Memory;
    /// Holladay 1: corneal thickness.
    HOLLADAY_CORNEA "Holladay 1 corneal thickness" "mm" = 0.56, Holladay1988 Memory;
    /// Holladay 1: retinal thickness.
    HOLLADAY_RT "Holladay 1 retinal thickness" "mm" = 0.200, Holladay1988 Memory;
    /// Surgeon factor from A, slope.
    SF_SLOPE "SF slope on A" "mm/D" = 0.5663, Holladay2003 Two;
    /// Surgeon factor from A, constant.
    SF_0 "SF constant" "mm" = -65.60, Holladay2003 Two;
    /// pACD from the surgeon factor, added.
    PACD_ADD "pACD addend" "mm" = 3.595, Holladay2003 Two;
    /// pACD from the surgeon factor, divisor.
    PACD_DIV "pACD divisor" "1" = 0.9704, Holladay2003 Two;

    /// Hoffer Q: shortest length in the ACD regression.
    HOFFERQ_MIN "Hoffer Q shortest A'" "mm" = 18.5, HofferQ1993 Memory;
    /// Hoffer Q: longest length in the ACD regression.
    HOFFERQ_MAX "Hoffer Q longest A'" "mm" = 31, HofferQ1993 Memory;
    /// Hoffer Q: where M and G change.
    HOFFERQ_EDGE "Hoffer Q edge" "mm" = 23, HofferQ1993 Memory;
    /// Hoffer Q: G at and below the edge.
    HOFFERQ_G_SHORT "Hoffer Q G, short" "mm" = 28, HofferQ1993 Memory;
    /// Hoffer Q: G above the edge.
    HOFFERQ_G_LONG "Hoffer Q G, long" "mm" = 23.5, HofferQ1993 Memory;
    /// Hoffer Q: mean length of the regression.
    HOFFERQ_MEAN "Hoffer Q mean AL" "mm" = 23.5, HofferQ1993 Memory;
    /// Hoffer Q: slope on length.
    HOFFERQ_SLOPE "Hoffer Q slope on A'" "1" = 0.3, HofferQ1993 Memory;
    /// Hoffer Q: factor of the cubic-looking term, outer.
    HOFFERQ_OUTER "Hoffer Q outer factor" "1/mm" = 0.1, HofferQ1993 Memory;
    /// Hoffer Q: factor of the cubic-looking term, inside the tangent.
    HOFFERQ_INNER "Hoffer Q inner factor" "deg/mm2" = 0.1, HofferQ1993 Memory;
    /// Hoffer Q: constant.
    HOFFERQ_0 "Hoffer Q constant" "mm" = -0.99166, HofferQ1993 Two;
    /// Hoffer Q: from ACD to the lens position of the optics.
    HOFFERQ_POSITION "Hoffer Q position offset" "mm" = 0.05, HofferQ1993 Memory;

    /// Haigis: a1 when unoptimised.
    HAIGIS_A1 "Haigis a1, unoptimised" "1" = 0.4, Haigis2004 Two;
    /// Haigis: a2 when unoptimised.
    HAIGIS_A2 "Haigis a2, unoptimised" "1" = 0.1, Haigis2004 Two;
    /// Haigis: unoptimised a0 from A, constant (the slope is ACDconst's).
    HAIGIS_A0 "Haigis a0 constant, unoptimised" "mm" = -72.434, Haigis2004 Two;

    /// Below this length guidance names Haigis or Hoffer Q.
    GUIDANCE_SHORT "guidance, short eye" "mm" = 22.00, Ng77 Memory;
    /// Above this length guidance names Haigis or SRK/T.
    GUIDANCE_LONG "guidance, long eye" "mm" = 26.00, Ng77 Memory;
    /// Above this length SRK/T's and T2's retinal thickness is negative.
    RETINA_TURNS "SRK/T retinal thickness zero at" "mm" = 32.38, SrkT1990 Two;
    /// Above this length SRK/T's LCOR falls.
    LCOR_TURNS "SRK/T LCOR largest at" "mm" = 36.20, SrkT1990 Two;
}
