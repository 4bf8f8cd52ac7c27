package org.scrubline.platform;

/** What a person does in a programme. A person may hold several. */
public enum Role {
    SUPERVISOR,
    TRAINEE,
    DIRECTOR,
    COMMITTEE_MEMBER,
    ADMINISTRATOR,
    VISITOR,
    ANALYST;

    /** The name the security layer knows this role by. */
    public String authority() {
        return "ROLE_" + name();
    }

    /** The message key of the printed name. */
    public String messageKey() {
        return "role." + name();
    }
}
