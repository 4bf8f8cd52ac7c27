package org.scrubline.platform;

/** Why an assertion does not stand, the first that was found. */
public enum AssertionFault {
    /** It is no assertion at all, or its key is none. */
    UNREADABLE,
    /** It answers another challenge: another record, or another state of this one. */
    CHALLENGE,
    /** It was made on another page than this server's. */
    PLACE,
    /** The passkey did not check who was holding it. */
    UNVERIFIED,
    /** The signature is not that of this key over these bytes. */
    SIGNATURE
}
