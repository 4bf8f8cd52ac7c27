package org.scrubline.entitlement;

/** What a committee can let a trainee do. Ordered decisions, not a ruler: never averaged. */
public enum EntitlementLevel {
    /** Holds, exposes, watches; practises on models. */
    E0,
    /** Named steps with the supervisor scrubbed. */
    E1,
    /** The whole case with the supervisor scrubbed. */
    E2,
    /** The whole case with the supervisor in the room, not scrubbed. */
    E3,
    /** The whole case with the supervisor in the building. */
    E4,
    /** Supervises others up to E2. */
    E5;

    /** Message key of its few words. */
    public String messageKey() {
        return "entitlement.level." + name();
    }

    /** Message key of the sentence that says what it means. */
    public String meaningKey() {
        return "entitlement.meaning." + name();
    }
}
