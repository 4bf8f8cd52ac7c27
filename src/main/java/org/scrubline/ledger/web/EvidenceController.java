package org.scrubline.ledger.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import org.scrubline.ledger.Checkpoints;
import org.scrubline.ledger.EvidenceChecks;
import org.scrubline.ledger.WholeOrganisation;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TakesAlong;
import org.scrubline.platform.TakesAlong.Size;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** What the director keeps, checks and takes along. For everyone else the page does not exist. */
@Controller
@RequestMapping("/evidence")
class EvidenceController {

    private static final String BACK = "redirect:/evidence";

    private final EvidencePages pages;
    private final Checkpoints checkpoints;
    private final EvidenceChecks checks;
    private final WholeOrganisation whole;

    EvidenceController(EvidencePages pages, Checkpoints checkpoints, EvidenceChecks checks, WholeOrganisation whole) {
        this.whole = whole;
        this.pages = pages;
        this.checkpoints = checkpoints;
        this.checks = checks;
    }

    @GetMapping
    String read(@AuthenticationPrincipal SignedIn who, Model model) {
        requireDirector(who);
        model.addAttribute("page", pages.page());
        model.addAttribute("whole", whole.directedBy(who));
        return "ledger/evidence";
    }

    @PostMapping("/checkpoint")
    String publish(@AuthenticationPrincipal SignedIn who, RedirectAttributes redirect) {
        requireDirector(who);
        String key = checkpoints.publish().isPresent() ? "ledger.checkpoint.published" : "ledger.checkpoint.nothing";
        redirect.addFlashAttribute("flash", pages.say(key));
        return BACK;
    }

    @PostMapping("/check")
    String check(@AuthenticationPrincipal SignedIn who, RedirectAttributes redirect) {
        requireDirector(who);
        checks.ask(who.personId());
        redirect.addFlashAttribute("flash", pages.say("ledger.check.asked"));
        return BACK;
    }

    @GetMapping("/checkpoint.txt")
    @TakesAlong(Size.ONE)
    ResponseEntity<String> checkpoint(@AuthenticationPrincipal SignedIn who) {
        requireDirector(who);
        String note = checkpoints.newest().orElseThrow(NotFound::new).note();
        return text("scrubline-checkpoint.txt", note);
    }

    @GetMapping("/key.txt")
    @TakesAlong(Size.ONE)
    ResponseEntity<String> key(@AuthenticationPrincipal SignedIn who) {
        requireDirector(who);
        return text("scrubline-verifier-key.txt", checkpoints.verifierKey() + "\n");
    }

    @GetMapping("/evidence.jsonl")
    @TakesAlong(Size.MANY)
    void export(@AuthenticationPrincipal SignedIn who, HttpServletResponse response) throws IOException {
        requireDirector(who);
        if (!whole.directedBy(who)) {
            throw new NotFound();
        }
        response.setContentType("application/jsonl");
        response.setCharacterEncoding(StandardCharsets.UTF_8);
        response.setHeader(HttpHeaders.CONTENT_DISPOSITION, attachment("scrubline-evidence.jsonl"));
        Writer out = new OutputStreamWriter(response.getOutputStream(), StandardCharsets.UTF_8);
        checks.export(out);
    }

    private static ResponseEntity<String> text(String name, String text) {
        return ResponseEntity.ok()
                .header(HttpHeaders.CONTENT_DISPOSITION, attachment(name))
                .contentType(new MediaType(MediaType.TEXT_PLAIN, StandardCharsets.UTF_8))
                .body(text);
    }

    private static String attachment(String name) {
        return ContentDisposition.attachment().filename(name).build().toString();
    }

    private static void requireDirector(SignedIn who) {
        if (!who.has(Role.DIRECTOR)) {
            throw new NotFound();
        }
    }
}
