package org.scrubline.committee.web;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.committee.Act;
import org.scrubline.committee.ActKind;
import org.scrubline.committee.DecisionFile;
import org.scrubline.committee.Decisions;
import org.scrubline.committee.Duties;
import org.scrubline.committee.SuspensionGround;
import org.scrubline.committee.Suspensions;
import org.scrubline.committee.web.ActForms.Ask;
import org.scrubline.entitlement.EntitlementWords;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Family;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Decisions that concern the reader, and for the office what waits after decisions, with suspensions. */
@Controller
class ConcerningController {

    private final Decisions decisions;
    private final Duties duties;
    private final Suspensions suspensions;
    private final DecisionPages pages;
    private final DutyPages dutyPages;
    private final ActForms forms;
    private final EntitlementWords entitlements;
    private final People people;
    private final CommitteeWords words;

    ConcerningController(
            Decisions decisions,
            Duties duties,
            Suspensions suspensions,
            DecisionPages pages,
            DutyPages dutyPages,
            ActForms forms,
            EntitlementWords entitlements,
            People people,
            CommitteeWords words) {
        this.decisions = decisions;
        this.duties = duties;
        this.suspensions = suspensions;
        this.pages = pages;
        this.dutyPages = dutyPages;
        this.forms = forms;
        this.entitlements = entitlements;
        this.people = people;
        this.words = words;
    }

    @GetMapping("/decisions")
    ModelAndView concerning(@AuthenticationPrincipal SignedIn who) {
        List<DecisionFile> files = decisions.concerning(who);
        boolean trainee = who.has(Role.TRAINEE);
        ModelAndView page = new ModelAndView("committee/decisions", "decisions", pages.list(files));
        page.addObject("own", trainee);
        page.addObject("mayDo", trainee ? entitlements.of(who) : null);
        page.addObject("said", trainee ? suspended(who) : List.of());
        return page;
    }

    private List<DecisionPage.SaidView> suspended(SignedIn who) {
        return who.grants().stream()
                .filter(grant -> grant.role() == Role.TRAINEE)
                .flatMap(grant -> suspensions.history(who, grant.programmeId(), who.personId()).stream())
                .map(pages::said)
                .toList();
    }

    @GetMapping("/decisions-due")
    ModelAndView due(@AuthenticationPrincipal SignedIn who) {
        if (!who.has(Role.DIRECTOR) && !who.has(Role.ADMINISTRATOR)) {
            throw new NotFound();
        }
        return new ModelAndView(
                "committee/decisions-due",
                "programmes",
                duties.of(who).stream().map(one -> dutyPages.of(who, one)).toList());
    }

    @GetMapping("/entitlements/{programme}/{trainee}/{family}/{act:suspend|reinstate}")
    ModelAndView ask(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID programme,
            @PathVariable UUID trainee,
            @PathVariable String family,
            @PathVariable String act) {
        return form(who, of(programme, trainee, family), kind(act), Typed.none(), List.of());
    }

    @PostMapping("/entitlements/{programme}/{trainee}/{family}/{act:suspend|reinstate}")
    ModelAndView say(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID programme,
            @PathVariable UUID trainee,
            @PathVariable String family,
            @PathVariable String act,
            @RequestParam MultiValueMap<String, String> values,
            RedirectAttributes redirect) {
        Suspensions.Of what = of(programme, trainee, family);
        Typed typed = new Typed(values);
        ActKind kind = kind(act);
        Attempt<List<Act>> said = kind == ActKind.SUSPENDED
                ? suspensions.suspend(
                        who, what, typed.one("ground", SuspensionGround.class).orElse(null), typed.signature())
                : suspensions.reinstate(who, what, typed.signature());
        return said.fold(
                done -> {
                    redirect.addFlashAttribute("flash", words.say("committee.act.done"));
                    return new ModelAndView("redirect:/decisions-due");
                },
                reasons -> {
                    ModelAndView page = form(who, what, kind, typed, reasons);
                    page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
                    return page;
                });
    }

    private static Suspensions.Of of(UUID programme, UUID trainee, String family) {
        Optional<Family> known = Typed.one(Family.class, family);
        return new Suspensions.Of(programme, trainee, known.orElseThrow(NotFound::new));
    }

    private static ActKind kind(String act) {
        return act.equals("suspend") ? ActKind.SUSPENDED : ActKind.REINSTATED;
    }

    private ModelAndView form(SignedIn who, Suspensions.Of what, ActKind kind, Typed typed, List<Refusal> reasons) {
        if (!who.has(Role.DIRECTOR, what.programmeId()) || who.personId().equals(what.traineeId())) {
            throw new NotFound();
        }
        Person trainee = people.person(what.traineeId()).orElseThrow(NotFound::new);
        Ask ask = new Ask(
                kind,
                words.say("committee.decision.title", trainee.printedName(), entitlements.family(what.family())),
                DutyPages.act(what.programmeId(), what.traineeId(), what.family(), kind),
                "/decisions-due",
                List.of(),
                null);
        return new ModelAndView("committee/act", "page", forms.of(who, ask, typed, reasons));
    }
}
