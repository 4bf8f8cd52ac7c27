package org.scrubline.committee.web;

import java.util.List;
import org.scrubline.platform.FormView;

/** The form that plans a meeting. */
record PlanPage(
        String programme,
        String programmeName,
        List<Option> members,
        List<Option> trainees,
        List<String> chosenMembers,
        List<String> chosenTrainees,
        FormView form) {}
