package org.scrubline.casework.web;

import java.util.ArrayList;
import java.util.List;
import org.scrubline.casework.CaseAside;
import org.scrubline.casework.CaseState;
import org.scrubline.casework.Cases;
import org.scrubline.casework.DeviceCases;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.casework.TraineeCase;
import org.scrubline.people.People;
import org.scrubline.platform.ListPage;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** A trainee's own cases, newest first. */
@Controller
class MyCasesController {

    private final Cases cases;
    private final DeviceCases intake;
    private final People people;
    private final CasePages pages;
    private final CaseWords words;

    MyCasesController(Cases cases, DeviceCases intake, People people, CasePages pages, CaseWords words) {
        this.cases = cases;
        this.intake = intake;
        this.people = people;
        this.pages = pages;
        this.words = words;
    }

    @GetMapping("/my-cases")
    String list(@AuthenticationPrincipal SignedIn who, @RequestParam(defaultValue = "1") int page, Model model) {
        if (!who.has(Role.TRAINEE)) {
            throw new NotFound();
        }
        model.addAttribute(
                "page",
                ListPage.of(cases.ofTrainee(who.personId()), page, "/my-cases")
                        .map(own -> own.stream().map(this::line).toList()));
        model.addAttribute(
                "asides", intake.asides(who).stream().map(this::aside).toList());
        return "casework/my-cases";
    }

    private Link aside(CaseAside aside) {
        String came = words.when(
                aside.receivedAt(), people.programme(aside.programmeId()).zone());
        return new Link(
                "/cases/aside/" + aside.id(),
                CaseBody.stored(aside.content()).text("reference"),
                words.say("case.aside.sent", came),
                null);
    }

    private Link line(TraineeCase own) {
        SurgicalCase found = own.surgicalCase();
        List<String> parts = new ArrayList<>(
                List.of(words.say(found.eye()), words.when(found), words.say("case.band.short", found.band())));
        if (found.state() == CaseState.ABANDONED) {
            parts.add(words.say("case.abandoned"));
        }
        own.sheets().forEach(sheet -> parts.add(words.say("my-cases.sheet." + sheet.state(), sheet.scorerName())));
        return new Link("/cases/" + found.id(), pages.title(found), String.join(" · ", parts), null);
    }
}
