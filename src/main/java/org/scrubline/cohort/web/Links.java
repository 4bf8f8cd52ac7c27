package org.scrubline.cohort.web;

import java.util.UUID;

/** Addresses of a trainee's pages. */
final class Links {

    private Links() {}

    static String trainee(UUID trainee, String procedure) {
        return "/progress/" + trainee + "?procedure=" + procedure;
    }

    static String step(UUID trainee, String procedure, String step) {
        return "/progress/" + trainee + "/steps/" + step + "?procedure=" + procedure;
    }
}
