package org.scrubline.rubric;

/** A family of procedures; entitlement is decided per family and complexity band. */
public enum Family {
    TRABECULECTOMY,
    DRAINAGE_DEVICE,
    DEEP_SCLERECTOMY,
    GEL_STENT,
    NEEDLING,
    POST_OPERATIVE_CARE;

    /** Whether the pressure months later says how such an operation went; needling and after-care belong to an earlier one. */
    public boolean judgedByOutcome() {
        return this != NEEDLING && this != POST_OPERATIVE_CARE;
    }
}
