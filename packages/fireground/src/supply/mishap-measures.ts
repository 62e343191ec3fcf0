/** How much goes wrong, where no department says otherwise; ours. */

/** What a hydrant or a place to fill is tried to lose: a fifth of its flow. */
export const WEAKER = 0.2;

/** The usual hand line [gpm]. */
export const ONE_LINE_GPM = 150;

/** Differences under this are no difference [gpm]. */
export const SLACK_GPM = 0.5;
