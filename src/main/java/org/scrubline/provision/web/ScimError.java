package org.scrubline.provision.web;

import org.jspecify.annotations.Nullable;

/** Why a request of the directory was not done (RFC 7644, section 3.12); the sentence is for its operator. */
class ScimError extends RuntimeException {

    private final int status;
    private final @Nullable String scimType;

    /**
     * A refusal.
     *
     * @param status HTTP status
     * @param scimType a word of table 9 of RFC 7644, or null
     */
    ScimError(int status, @Nullable String scimType, String detail) {
        super(detail);
        this.status = status;
        this.scimType = scimType;
    }

    static ScimError invalid(String scimType, String detail) {
        return new ScimError(400, scimType, detail);
    }

    static ScimError unknown() {
        return new ScimError(404, null, "There is no such resource.");
    }

    int status() {
        return status;
    }

    @Nullable
    String scimType() {
        return scimType;
    }
}
