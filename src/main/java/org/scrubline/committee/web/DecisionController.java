package org.scrubline.committee.web;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.scrubline.committee.Act;
import org.scrubline.committee.ActKind;
import org.scrubline.committee.Acts;
import org.scrubline.committee.DecisionFile;
import org.scrubline.committee.Decisions;
import org.scrubline.committee.Pack;
import org.scrubline.committee.Packs;
import org.scrubline.committee.web.ActForms.Ask;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Receipt;
import org.scrubline.ledger.Receipts;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.PagePrint;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TakesAlong;
import org.scrubline.platform.TakesAlong.Size;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
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

/** A signed decision, the letter about it, and what is said after it. */
@Controller
@RequestMapping("/decisions/{id}")
class DecisionController {

    private final Decisions decisions;
    private final Acts acts;
    private final Packs packs;
    private final Receipts receipts;
    private final DecisionPages pages;
    private final PackPages evidence;
    private final ActForms forms;
    private final CommitteeSeen seen;
    private final PagePrint print;
    private final CommitteeWords words;

    DecisionController(
            Decisions decisions,
            Acts acts,
            Packs packs,
            Receipts receipts,
            DecisionPages pages,
            PackPages evidence,
            ActForms forms,
            CommitteeSeen seen,
            PagePrint print,
            CommitteeWords words) {
        this.decisions = decisions;
        this.acts = acts;
        this.packs = packs;
        this.receipts = receipts;
        this.pages = pages;
        this.evidence = evidence;
        this.forms = forms;
        this.seen = seen;
        this.print = print;
        this.words = words;
    }

    @GetMapping
    ModelAndView read(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id) {
        DecisionFile file = decisions.read(who, id);
        seen.decision(who, file.decision());
        return new ModelAndView("committee/decision", "page", pages.of(who, file));
    }

    @GetMapping("/letter")
    ModelAndView letter(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id) {
        DecisionFile file = decisions.read(who, id);
        seen.decision(who, file.decision());
        return new ModelAndView("committee/letter", "page", letter(who, file));
    }

    @GetMapping("/letter.pdf")
    @TakesAlong(Size.ONE)
    ResponseEntity<byte[]> letterPdf(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, Locale locale) {
        DecisionFile file = decisions.read(who, id);
        seen.decision(who, file.decision());
        Receipt receipt = receipts.of(LeafKind.DECISION, id);
        Map<String, Object> model = Map.of("page", letter(who, file), "receipt", receipt);
        byte[] pdf = print.pdf("committee/letter-print", model, locale, "receipt-" + id + ".json", receipt.json());
        return PackController.file("letter-" + id + ".pdf", MediaType.APPLICATION_PDF, pdf);
    }

    private LetterPage letter(SignedIn who, DecisionFile file) {
        Pack pack = packs.read(
                who, file.decision().content().meeting(), file.decision().traineeId());
        EvidencePage page = evidence.of(pack, new PackPages.Around(List.of(), null, "", null));
        return pages.letter(file, page);
    }

    @PostMapping("/letter-given")
    ModelAndView letterGiven(
            @AuthenticationPrincipal SignedIn who, @PathVariable UUID id, RedirectAttributes redirect) {
        acts.sendLetter(who, id).orThrow();
        redirect.addFlashAttribute("flash", words.say("committee.letter.done"));
        return new ModelAndView("redirect:/decisions-due");
    }

    /** The form for what this person may say now; whoever has nothing to say reads the decision. */
    @GetMapping("/{act:appeal|panel|uphold|not-uphold|end-appeal}")
    ModelAndView ask(@AuthenticationPrincipal SignedIn who, @PathVariable UUID id, @PathVariable String act) {
        DecisionFile file = decisions.read(who, id);
        ActKind kind = kind(act);
        return acts.next(who, file).contains(kind)
                ? form(who, file, kind, Typed.none(), List.of())
                : new ModelAndView("redirect:" + Links.decision(id));
    }

    @PostMapping("/{act:appeal|panel|uphold|not-uphold|end-appeal}")
    ModelAndView say(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable UUID id,
            @PathVariable String act,
            @RequestParam MultiValueMap<String, String> values,
            RedirectAttributes redirect) {
        Typed typed = new Typed(values);
        ActKind kind = kind(act);
        return said(who, id, kind, typed)
                .fold(
                        done -> {
                            redirect.addFlashAttribute("flash", words.say("committee.act.done"));
                            return new ModelAndView("redirect:" + Links.decision(id));
                        },
                        reasons -> {
                            ModelAndView page = form(who, decisions.read(who, id), kind, typed, reasons);
                            page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
                            return page;
                        });
    }

    private Attempt<Act> said(SignedIn who, UUID id, ActKind kind, Typed typed) {
        return switch (kind) {
            case APPEALED -> acts.appeal(who, id, typed.signature());
            case PANEL_NAMED -> acts.namePanel(who, id, typed.ids("persons"), typed.signature());
            case APPEAL_ENDED -> acts.endAppeal(who, id, typed.signature());
            default -> acts.decideAppeal(who, id, kind == ActKind.APPEAL_UPHELD, typed.signature());
        };
    }

    private ModelAndView form(SignedIn who, DecisionFile file, ActKind kind, Typed typed, List<Refusal> reasons) {
        Ask ask = new Ask(
                kind,
                pages.list(List.of(file)).get(0).label(),
                Links.decision(file.id()) + "/" + DecisionPages.path(kind),
                Links.decision(file.id()),
                kind == ActKind.PANEL_NAMED ? acts.hearers(who, file.id()) : List.of(),
                kind == ActKind.APPEALED
                        ? null
                        : file.said(ActKind.APPEALED)
                                .map(act -> act.content().text())
                                .orElse(null));
        return new ModelAndView("committee/act", "page", forms.of(who, ask, typed, reasons));
    }

    private static ActKind kind(String path) {
        return List.of(
                        ActKind.APPEALED,
                        ActKind.PANEL_NAMED,
                        ActKind.APPEAL_UPHELD,
                        ActKind.APPEAL_NOT_UPHELD,
                        ActKind.APPEAL_ENDED)
                .stream()
                .filter(kind -> DecisionPages.path(kind).equals(path))
                .findFirst()
                .orElseThrow(NotFound::new);
    }
}
