package org.scrubline.committee.web;

import java.util.List;

/**
 * What a decision says, in words.
 *
 * @param evidence what the evidence said on each level
 * @param departing why it departs from that; empty when it does not
 * @param evidenceHref the frozen evidence
 */
record DecisionView(
        String title,
        String trainee,
        String matter,
        String answer,
        String meaning,
        String review,
        List<String> evidence,
        List<String> reasons,
        List<String> departing,
        List<String> dissent,
        String votes,
        List<String> members,
        String meetingAt,
        String evidenceHref,
        String evidenceHash) {}
