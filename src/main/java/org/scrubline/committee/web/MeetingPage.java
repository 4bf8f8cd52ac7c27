package org.scrubline.committee.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.FormView;

/**
 * One meeting.
 *
 * @param next states it can be moved to by this reader
 * @param here values of the members ticked as present
 * @param presence null unless this reader may write down who is there
 * @param chairs whom this reader may name as chair; empty when none may be
 * @param conflictMembers for whom this reader may declare; empty when for nobody
 */
record MeetingPage(
        String href,
        String title,
        List<Fact> facts,
        List<Option> next,
        List<Member> members,
        @Nullable List<Option> presence,
        List<String> here,
        List<Option> chairs,
        List<Trainee> trainees,
        List<String> conflicts,
        List<Option> conflictMembers,
        List<Option> conflictTrainees,
        List<Option> moreMembers,
        List<Option> moreTrainees,
        List<Link> decisions,
        FormView form) {

    record Member(String name, String note) {}

    /**
     * Whom it speaks about.
     *
     * @param evidence the frozen evidence, for who may read it
     * @param freeze where to freeze it, when it is not frozen and this reader may
     */
    record Trainee(
            String name,
            String state,
            @Nullable Link evidence,
            @Nullable String freeze) {}
}
