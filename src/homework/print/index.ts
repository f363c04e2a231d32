/**
 * What is printed of homework: papers, their key, slips to join by, evidence. Apart from the folder above, because only who
 * prints needs the libraries that write PDF. docs/paper.md says it in words.
 */
export { type AnswerKeyRequest, answerKeyPdf } from './answer-key.ts';
export { type ClassPapersRequest, classPapersPdf, type PrintedPaper } from './class-papers.ts';
export type { Out } from './document.ts';
export { type EvidenceRequest, evidencePdf } from './evidence.ts';
export { type JoiningSlip, joiningSlipsPdf } from './joining-slips.ts';
export { keyOf } from './key-of.ts';
export { standingsOf } from './proving-answers.ts';
