package org.scrubline.committee.web;

import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.scrubline.committee.Meeting;
import org.scrubline.committee.MeetingPlan;
import org.scrubline.committee.MeetingState;
import org.scrubline.committee.Meetings;
import org.scrubline.committee.Packs;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Meetings: the list, planning one, and one with what can be done in it. */
@Controller
@RequestMapping("/meetings")
class MeetingController {

    private final Meetings meetings;
    private final Packs packs;
    private final People people;
    private final MeetingPages pages;
    private final CommitteeWords words;

    MeetingController(Meetings meetings, Packs packs, People people, MeetingPages pages, CommitteeWords words) {
        this.meetings = meetings;
        this.packs = packs;
        this.people = people;
        this.pages = pages;
        this.words = words;
    }

    @GetMapping
    ModelAndView list(@AuthenticationPrincipal SignedIn who) {
        if (!who.has(Role.DIRECTOR) && !who.has(Role.COMMITTEE_MEMBER) && !who.has(Role.ADMINISTRATOR)) {
            throw new NotFound();
        }
        ModelAndView page = new ModelAndView("committee/meetings", "meetings", pages.list(meetings.of(who)));
        page.addObject("plans", pages.plans(meetings.planning(who)));
        return page;
    }

    @GetMapping("/new")
    ModelAndView planForm(@AuthenticationPrincipal SignedIn who, @RequestParam UUID programme) {
        return planForm(who, planned(who, programme), Typed.none(), List.of());
    }

    @PostMapping("/new")
    ModelAndView plan(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam UUID programme,
            @RequestParam MultiValueMap<String, String> values,
            RedirectAttributes redirect) {
        Programme of = planned(who, programme);
        Typed typed = new Typed(values);
        MeetingPlan plan = new MeetingPlan(
                typed.at("at", of.zone()),
                typed.ids("members"),
                typed.id("chair").orElse(null),
                typed.ids("trainees"));
        return meetings.plan(who, programme, plan).fold(meeting -> done(meeting.id(), "planned", redirect), reasons -> {
            ModelAndView page = planForm(who, of, typed, reasons);
            page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            return page;
        });
    }

    private Programme planned(SignedIn who, UUID programme) {
        return meetings.planning(who).stream()
                .filter(one -> one.id().equals(programme))
                .findFirst()
                .orElseThrow(NotFound::new);
    }

    private ModelAndView planForm(SignedIn who, Programme programme, Typed typed, List<Refusal> reasons) {
        return new ModelAndView(
                "committee/meeting-plan",
                "page",
                pages.plan(
                        programme,
                        meetings.invitable(who, programme.id()),
                        meetings.trainees(who, programme.id()),
                        typed,
                        reasons));
    }

    @GetMapping("/{id}")
    ModelAndView read(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id) {
        return page(who, id, Typed.none(), List.of());
    }

    private ModelAndView page(SignedIn who, UUID id, Typed typed, List<Refusal> reasons) {
        return new ModelAndView("committee/meeting", "page", pages.of(who, meetings.read(who, id), typed, reasons));
    }

    @PostMapping("/{id}/state")
    ModelAndView move(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> values,
            RedirectAttributes redirect) {
        Typed typed = new Typed(values);
        Attempt<Meeting> moved = typed.one("next", MeetingState.class)
                .map(next -> meetings.move(who, id, next))
                .orElseGet(() -> Attempt.refused(Refusal.of("committee.refusal.over")));
        return answer(who, id, moved, typed, redirect);
    }

    @PostMapping("/{id}/presence")
    ModelAndView presence(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> values,
            RedirectAttributes redirect) {
        Typed typed = new Typed(values);
        return answer(who, id, meetings.presence(who, id, Set.copyOf(typed.ids("present"))), typed, redirect);
    }

    @PostMapping("/{id}/more")
    ModelAndView more(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> values,
            RedirectAttributes redirect) {
        Typed typed = new Typed(values);
        return answer(who, id, meetings.extend(who, id, typed.ids("members"), typed.ids("trainees")), typed, redirect);
    }

    @PostMapping("/{id}/chair")
    ModelAndView chair(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> values,
            RedirectAttributes redirect) {
        Typed typed = new Typed(values);
        Attempt<Meeting> named = typed.id("chair")
                .map(chair -> meetings.chair(who, id, chair))
                .orElseGet(() -> Attempt.refused(Refusal.at("chair", "committee.refusal.chair")));
        return answer(who, id, named, typed, redirect);
    }

    @PostMapping("/{id}/conflicts")
    ModelAndView conflict(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> values,
            RedirectAttributes redirect) {
        Typed typed = new Typed(values);
        UUID member = typed.id("member").orElse(who.personId());
        Attempt<Meeting> declared = typed.id("trainee")
                .map(trainee -> meetings.declareConflict(who, id, member, trainee, typed.text("reason")))
                .orElseGet(() -> Attempt.refused(Refusal.at("trainee", "committee.refusal.conflict-who")));
        return answer(who, id, declared, typed, redirect);
    }

    @PostMapping("/{id}/trainees/{trainee}/freeze")
    ModelAndView freeze(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @PathVariable UUID trainee,
            RedirectAttributes redirect) {
        return packs.freeze(who, id, trainee)
                .fold(
                        frozen -> {
                            ZoneId zone = people.programme(
                                            meetings.read(who, id).programmeId())
                                    .zone();
                            redirect.addFlashAttribute(
                                    "flash", words.say("committee.frozen.done", words.at(frozen.cutOff(), zone)));
                            return new ModelAndView("redirect:" + Links.meeting(id));
                        },
                        reasons -> refused(who, id, Typed.none(), reasons));
    }

    private ModelAndView answer(
            SignedIn who, UUID id, Attempt<Meeting> attempt, Typed typed, RedirectAttributes redirect) {
        return attempt.fold(
                meeting -> done(meeting.id(), "changed", redirect), reasons -> refused(who, id, typed, reasons));
    }

    private ModelAndView refused(SignedIn who, UUID id, Typed typed, List<Refusal> reasons) {
        ModelAndView page = page(who, id, typed, reasons);
        page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return page;
    }

    private ModelAndView done(UUID meeting, String what, RedirectAttributes redirect) {
        redirect.addFlashAttribute("flash", words.say("committee.meeting.done." + what));
        return new ModelAndView("redirect:" + Links.meeting(meeting));
    }
}
