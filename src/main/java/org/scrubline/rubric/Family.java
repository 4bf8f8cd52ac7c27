package org.scrubline.rubric;

/** A family of procedures; entitlement is decided per family and complexity band. */
public enum Family {
    TRABECULECTOMY,
    DRAINAGE_DEVICE,
    DEEP_SCLERECTOMY,
    GEL_STENT,
    NEEDLING,
    POST_OPERATIVE_CARE
}
