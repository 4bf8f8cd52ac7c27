package org.scrubline.signoff.web;

import java.util.UUID;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SigningOutlook;
import org.scrubline.signoff.SigningStatements;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.ModelAndView;

/** What stands on the review page beside what is signed: how late it is, who else must sign, and the statement. */
@Component
class ReviewExtras {

    private final SigningOutlook outlook;
    private final ReviewNotices notices;
    private final SigningStatements statements;

    ReviewExtras(SigningOutlook outlook, ReviewNotices notices, SigningStatements statements) {
        this.outlook = outlook;
        this.notices = notices;
        this.statements = statements;
    }

    void add(ModelAndView page, SignedIn who, UUID sheetId) {
        page.addObject("notices", notices.of(outlook.of(who, sheetId)));
        page.addObject("accepted", statements.accepted(who.personId()));
    }
}
