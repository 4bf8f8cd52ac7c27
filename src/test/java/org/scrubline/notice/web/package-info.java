@NullMarked
package org.scrubline.notice.web;

import org.jspecify.annotations.NullMarked;
