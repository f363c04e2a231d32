/** Why the engine gives nothing. */
export const engine = {
  onOpenPaper:
    'This circuit is on a homework paper of yours that is open; other names for its devices change nothing. It is not marked or run here before you have handed that paper in. Your tutor can see that it was tried.',
  partMissing: 'This part of the page could not be loaded. Once it has been, it works without network.',
  couldNotStart: 'The part of the page that works out circuits could not start.',
};
