package org.scrubline.outcome.web;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.outcome.FollowUp;
import org.scrubline.outcome.OutcomeWork;
import org.scrubline.outcome.WorkList;
import org.scrubline.platform.Audited;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** The visits somebody has to find out about. */
@Controller
class OutcomesController {

    static final List<Role> ENTER = List.of(Role.DIRECTOR, Role.ADMINISTRATOR, Role.SUPERVISOR, Role.TRAINEE);

    private final OutcomeWork work;
    private final WorkListPages pages;
    private final ApplicationEventPublisher events;

    OutcomesController(OutcomeWork work, WorkListPages pages, ApplicationEventPublisher events) {
        this.work = work;
        this.pages = pages;
        this.events = events;
    }

    @GetMapping("/outcomes")
    String list(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam @Nullable UUID programme,
            @RequestParam(defaultValue = "") String show,
            @RequestParam(defaultValue = "") String window,
            @RequestParam(defaultValue = "1") int page,
            Model model) {
        WorkList.Show shown = one(WorkList.Show.class, show).orElse(WorkList.Show.OPEN);
        FollowUp only = one(FollowUp.class, window).orElse(null);
        WorkList list = work.read(who, new OutcomeWork.Wish(programme, shown, only, page));
        if (list.whole()) {
            Audited.Item item = new Audited.Item(
                    "programme-list",
                    list.programme().id(),
                    null,
                    list.programme().name());
            events.publishEvent(new RecordSeen(who, null, list.programme().id(), item, null));
        }
        model.addAttribute(
                "rates",
                who.has(Role.DIRECTOR, list.programme().id())
                        || who.has(Role.COMMITTEE_MEMBER, list.programme().id()));
        model.addAttribute("page", pages.page(list, shown, only));
        return "outcome/outcomes";
    }

    /** The constant of that name; empty for no choice, not found for what is none. */
    static <E extends Enum<E>> Optional<E> one(Class<E> kind, String name) {
        if (name.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Arrays.stream(kind.getEnumConstants())
                .filter(constant -> constant.name().equals(name))
                .findFirst()
                .orElseThrow(NotFound::new));
    }
}
