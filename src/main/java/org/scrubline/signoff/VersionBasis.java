package org.scrubline.signoff;

/** By which right somebody signs a new version of a sheet. */
public enum VersionBasis {
    /** It is their own score. */
    SCORER,
    /** They reviewed a contest and agreed with the trainee. */
    CONTEST_UPHELD,
    /** A director named them, because whoever signed before has left. */
    DELEGATED
}
