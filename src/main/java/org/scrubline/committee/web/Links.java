package org.scrubline.committee.web;

import java.util.UUID;

/** Addresses of this room's pages, and of records it leads to. */
final class Links {

    private Links() {}

    static String meeting(UUID meeting) {
        return "/meetings/" + meeting;
    }

    static String evidence(UUID meeting, UUID trainee) {
        return meeting(meeting) + "/trainees/" + trainee;
    }

    static String writing(UUID meeting, UUID trainee) {
        return evidence(meeting, trainee) + "/decision";
    }

    static String decision(UUID decision) {
        return "/decisions/" + decision;
    }

    static String record(UUID record) {
        return "/signed/" + record;
    }
}
