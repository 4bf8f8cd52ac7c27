package org.scrubline.rubric;

import java.util.List;

/** Codes of the procedures the shipped library knows. */
public final class Procedures {

    public static final String TRAB_FORNIX = "TRAB_FORNIX";
    public static final String TRAB_LIMBUS = "TRAB_LIMBUS";
    public static final String DRAINAGE_DEVICE = "DRAINAGE_DEVICE";
    public static final String DEEP_SCLERECTOMY = "DEEP_SCLERECTOMY";
    public static final String GEL_STENT = "GEL_STENT";
    public static final String GEL_STENT_OPEN = "GEL_STENT_OPEN";
    public static final String NEEDLING = "NEEDLING";
    public static final String POSTOP_CARE = "POSTOP_CARE";

    /** All codes, in the order in which lists show them. */
    public static final List<String> ALL = List.of(
            TRAB_FORNIX,
            TRAB_LIMBUS,
            DRAINAGE_DEVICE,
            DEEP_SCLERECTOMY,
            GEL_STENT,
            GEL_STENT_OPEN,
            NEEDLING,
            POSTOP_CARE);

    private Procedures() {}
}
