package org.scrubline.progress.web;

import java.util.List;
import org.scrubline.platform.Audited;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.progress.ListedCase;
import org.scrubline.progress.OperatingLists;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** The evening before: what is planned, and what to look at. */
@Controller
class ListController {

    private final OperatingLists lists;
    private final ListPages pages;
    private final ApplicationEventPublisher events;

    ListController(OperatingLists lists, ListPages pages, ApplicationEventPublisher events) {
        this.lists = lists;
        this.pages = pages;
        this.events = events;
    }

    @GetMapping("/list")
    String list(@AuthenticationPrincipal SignedIn who, Model model) {
        boolean supervisor = who.has(Role.SUPERVISOR);
        if (!supervisor && !who.has(Role.TRAINEE)) {
            throw new NotFound();
        }
        List<ListedCase> cases = supervisor ? lists.ofSupervisor(who) : lists.ofTrainee(who);
        if (supervisor) {
            cases.stream()
                    .filter(one -> one.evidence().isPresent())
                    .forEach(one -> events.publishEvent(seen(who, one)));
        }
        model.addAttribute("own", !supervisor);
        model.addAttribute("page", pages.page(cases, !supervisor));
        return "progress/list";
    }

    private static RecordSeen seen(SignedIn who, ListedCase one) {
        return new RecordSeen(
                who,
                one.planned().traineeId(),
                one.planned().surgicalCase().programmeId(),
                new Audited.Item("progress", one.planned().traineeId(), null, ""),
                null);
    }
}
